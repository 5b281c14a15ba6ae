import type { Page } from './page.ts';
import type { RoundState } from './state.ts';

/** What every part of the round takes. */
export interface RoundProps {
  readonly page: Page;
  readonly round: RoundState;
  /** Said to the person, and read out. */
  readonly say: (text: string) => void;
}
