import type { Sides } from './staff-view.ts';
import type { Model } from '../diagnosis/types.ts';

/** What is known of a guide besides its note book, and of those it hands over to. */
export interface Figures {
  /** The guide's stops at which the breaker stays off. */
  readonly breakerOff: readonly string[];
  /** The diagnosis models of the guide and of those it hands over to, by guide. */
  readonly models: Readonly<Record<string, Model>>;
  readonly sides: Sides;
}
