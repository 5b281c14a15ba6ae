/** Whether the firm is open, by its own clock wherever the reader is. */

/** Minutes since midnight, in order. */
type Spans = readonly (readonly [from: number, until: number])[];

/** `hours` of `content/firm.yaml` as a page carries it. */
export interface OpenHours {
  /** IANA time zone. */
  readonly zone: string;
  /** Spans of each day of the week, Sunday first. */
  readonly open: readonly (Spans | undefined)[];
  /** ISO 8601 date → spans of that day alone. */
  readonly holidays: Readonly<Record<string, Spans | undefined>>;
}

export type OpenState =
  | { readonly open: true; readonly until: number }
  /** `day`: 0 is Monday; `ahead`: days from today. Without `next` nothing is told of two weeks. */
  | {
      readonly open: false;
      readonly next?: { readonly day: number; readonly ahead: number; readonly from: number };
    };

const DAY = 86_400_000;
/** Two weeks: a firm's holidays are shorter, or it says more in its sentence. */
const AHEAD = 14;

export function openState({ zone, open, holidays }: OpenHours, now: Date): OpenState {
  // The firm's clock on the wall, as if it were the reader's: few bytes, and 24 hours parse anywhere.
  const there = new Date(now.toLocaleString('en-US', { timeZone: zone, hourCycle: 'h23' }));
  const minute = there.getHours() * 60 + there.getMinutes();
  for (let ahead = 0; ahead <= AHEAD; ahead += 1) {
    const week = there.getDay();
    // Swedes write dates as ISO 8601 does.
    const spans = holidays[there.toLocaleDateString('sv')] ?? open[week] ?? [];
    const span = spans.find(([, until]) => ahead > 0 || until > minute);
    if (span) {
      const [from, until] = span;
      return ahead === 0 && from <= minute
        ? { open: true, until }
        : { open: false, next: { day: (week + 6) % 7, ahead, from } };
    }
    there.setDate(there.getDate() + 1);
  }
  return { open: false };
}

/** A time of the day, `7 AM`, that no line breaks. @param minute since midnight */
export function timeOfDay(locale: string, minute: number): string {
  // ICU writes whole hours in Canada's French `07 h`; people write `7 h`.
  return new Intl.DateTimeFormat(locale, {
    timeZone: 'UTC',
    hour: 'numeric',
    minute: minute % 60 === 0 ? undefined : '2-digit',
    hour12: locale.startsWith('en') || undefined,
  })
    .format(minute * 60_000)
    .replace(/^0(?=\d h)/, '')
    .replaceAll(' ', '\u00a0');
}

/** The name of a day of the week. @param day 0 is Monday */
export function nameOfDay(locale: string, day: number): string {
  // 1970-01-05 was a Monday.
  return new Intl.DateTimeFormat(locale, { timeZone: 'UTC', weekday: 'long' }).format(
    (4 + day) * DAY,
  );
}
