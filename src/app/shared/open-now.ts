/** Whether the firm is open, by its own clock wherever the reader is. */

/** Minutes since midnight, in order. */
type Spans = readonly (readonly [from: number, until: number])[];

/** `hours` of `content/firm.yaml` as a page carries it. */
export interface OpenHours {
  /** IANA time zone. */
  readonly zone: string;
  /** Day of the week → spans; a day that is not there is closed. */
  readonly open: Readonly<Record<string, Spans | undefined>>;
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
const WEEK = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
/** Two weeks: a firm's holidays are shorter, or it says more in its sentence. */
const AHEAD = 14;

/** The calendar's day, as midnight UTC, and the minute of it, where the firm is. */
function clockOf(zone: string, now: Date): { readonly day: number; readonly minute: number } {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    ...{ year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric', minute: 'numeric' },
  }).formatToParts(now);
  const of = (type: string) => Number(parts.find((part) => part.type === type)?.value);
  return {
    day: Date.UTC(of('year'), of('month') - 1, of('day')),
    minute: of('hour') * 60 + of('minute'),
  };
}

export function openState({ zone, open, holidays }: OpenHours, now: Date): OpenState {
  const { day, minute } = clockOf(zone, now);
  for (let ahead = 0; ahead <= AHEAD; ahead += 1) {
    const date = new Date(day + ahead * DAY);
    const week = date.getUTCDay();
    const spans = holidays[date.toISOString().slice(0, 10)] ?? open[WEEK[week] ?? ''] ?? [];
    const span = spans.find(([, until]) => ahead > 0 || until > minute);
    if (!span) continue;
    const [from, until] = span;
    return ahead === 0 && from <= minute
      ? { open: true, until }
      : { open: false, next: { day: (week + 6) % 7, ahead, from } };
  }
  return { open: false };
}

/** A time of the day, `7 AM`. @param minute since midnight */
export function timeOfDay(locale: string, minute: number): string {
  return new Intl.DateTimeFormat(locale, {
    timeZone: 'UTC',
    hour: 'numeric',
    ...(minute % 60 === 0 ? {} : { minute: '2-digit' }),
    ...(locale.startsWith('en') ? { hour12: true } : {}),
  }).format(minute * 60_000);
}

/** The name of a day of the week. @param day 0 is Monday */
export function nameOfDay(locale: string, day: number): string {
  // 1970-01-05 was a Monday.
  return new Intl.DateTimeFormat(locale, { timeZone: 'UTC', weekday: 'long' }).format(
    (4 + day) * DAY,
  );
}
