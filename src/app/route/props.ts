import type { PartsToBring } from '../../route/parts-to-bring.ts';
import type { Page } from './page.ts';
import type { RouteState } from './state.ts';

/** What every part of the route takes. */
export interface RouteProps {
  readonly page: Page;
  readonly route: RouteState;
  /** Said to the person, and read out. */
  readonly say: (text: string) => void;
}

/** What those take that show or save the load. */
export interface LoadProps extends RouteProps {
  readonly load: PartsToBring;
}
