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

/** In the order shown: danger to people first, then to the technician, then to the oven. */
export const flags = [
  'panel-bad',
  'tripped',
  'late-light',
  'breaker-off',
  'yellow-flame',
  'late-light',
  'cracked-top',
  'burner-on',
  'wont-stop',
  'clean-trouble',
  'heat-started',
  'still-hot',
  'error-seen',
  'foil',
  'burner-foil',
  'on-part',
  'cleaner',
  'something-inside',
  'maybe-inside',
  'door-forced',
  'maybe-forced',
  'hum',
  'leans',
] as const;
export type Flag = (typeof flags)[number];

/** °F from lowest to highest; null where the answer names no end. */
export type Band = readonly [low: number | null, high: number | null];

/** What answers say of an oven's miss, each by `text.answer`, the setting and the readings apart. */
export interface Miss {
  readonly set: Readonly<Record<string, readonly [low: number, high: number]>>;
  /** What a thermometer in the oven showed less what was set. */
  readonly readings: Readonly<Record<string, Band>>;
}

/** One guide's side; every part may be empty. */
export interface Side {
  readonly groups: Readonly<Record<string, Group>>;
  /** Node's sentences, a dot, answer → flag. */
  readonly flags: Readonly<Record<string, Flag>>;
  /** Guides that ask for readings of an oven thermometer only. */
  readonly miss?: Miss | undefined;
}

/** By guide. */
export type Sides = Readonly<Record<string, Side>>;
