/** How a technician sees a guide: `preview.yaml` beside its graph. */

/** In the order shown; what was answered elsewhere counts under the first. */
export const groups = [
  'happened',
  'display',
  'heat',
  'door',
  'inside',
  'burner',
  'power',
  'last',
] as const;
export type Group = (typeof groups)[number];

/** °F from lowest to highest; null where the answer names no end. */
export type Band = readonly [low: number | null, high: number | null];

/** What answers say of an oven's miss, each by `sentences.answer`, the setting and the readings apart. */
export interface Miss {
  readonly set: Readonly<Record<string, readonly [low: number, high: number]>>;
  /** What a thermometer in the oven showed less what was set. */
  readonly readings: Readonly<Record<string, Band>>;
}

/** How staff see one guide; its nodes go by the names of their sentences there. */
export interface StaffView {
  readonly groups: Readonly<Record<string, Group>>;
  /** Guides that ask for readings of an oven thermometer only. */
  readonly miss?: Miss | undefined;
}

/** By guide. */
export type StaffViews = Readonly<Record<string, StaffView>>;
