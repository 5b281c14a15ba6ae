import type { Page } from './page.ts';
import type { RouteState } from './state.ts';

/** What every part of the route takes. */
export interface RouteProps {
  readonly page: Page;
  readonly route: RouteState;
  /** Said to the person, and read out. */
  readonly say: (text: string) => void;
}
