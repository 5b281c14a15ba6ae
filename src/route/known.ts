/** Which of a table's columns say what is known of a caller, and what a time window says. */
import { callerFields, tidyCaller, type Caller, type CallerField } from '../visit/job.ts';
import type { Labels } from '../visit/hand-over.ts';

/** Common headings of schedules, tried after our own labels; the first column that fits counts. */
const HEADINGS: Partial<Record<CallerField, RegExp>> = {
  time: /^(?:preferred |arrival )?(?:time|window|when|appointment|slot|arrival)(?: window| slot)?$/,
  name: /^(?:customer|client|caller|full)?(?: ?name)?$/,
  phone: /^(?:call ?back|phone|telephone|tel|mobile|cell)(?: ?(?:number|no))?\.?$/,
  address: /^(?:(?:service|street) )?(?:address|street|location)$/,
  model: /^model\b/,
  remark: /^(?:remarks?|notes?|comments?)$/,
};

export type KnownColumns = ReadonlyMap<CallerField, number>;

/** Field → its column's place, for those that a heading names. */
export function knownColumns(columns: readonly string[], labels: Labels): KnownColumns {
  const names = columns.map((name) => name.trim().toLowerCase());
  return new Map(
    callerFields.flatMap((field) => {
      const own = names.indexOf(labels[field].toLowerCase());
      const place =
        own >= 0
          ? own
          : names.findIndex((name) => name !== '' && HEADINGS[field]?.test(name) === true);
      return place < 0 ? [] : [[field, place] as const];
    }),
  );
}

/** What a visit's cells say of its caller. */
export const callerIn = (known: KnownColumns, others: readonly string[]): Caller =>
  tidyCaller(Object.fromEntries([...known].map(([field, place]) => [field, others[place] ?? ''])));

/** When a visit is to be; minutes from midnight by the clock on the wall. */
export interface Window {
  /** ISO 8601 date, where the text names one. */
  readonly day?: string;
  readonly from: number;
  /** After `from`, where the text says. */
  readonly to?: number;
}

const NOON = 12 * 60;
/** Hours below this with no am or pm are of the afternoon: nobody is visited before. Common practice. */
const EARLIEST = 7;
const TIME = /(\d{1,2})(?:[:.h](\d\d))?\s*(?:([ap])\.?m?\.?(?![\p{L}\p{N}]))?/giu;

interface Clock {
  readonly minute: number;
  /** Hour and meridiem as said. */
  readonly half: string | undefined;
  /** Written so that the day has 24 hours: 08:00, 14:30. */
  readonly full: boolean;
}

function clockOf([, hour = '', minute = '0', half]: RegExpMatchArray): Clock | undefined {
  const [hours, minutes] = [Number(hour), Number(minute)];
  if (hours > 23 || minutes > 59) return undefined;
  const full = hour.length === 2 && (hour.startsWith('0') || hours > 12);
  return { minute: hours * 60 + minutes, half: half?.toLowerCase(), full };
}

/** Minutes of a clock in a half of the day: 12 am is midnight, 12 pm noon. */
const inHalf = ({ minute }: Clock, half: string): number =>
  (minute % NOON) + (half === 'p' ? NOON : 0);

/**
 * A time window as people write it: `8-10`, `8:00 to 10:30`, `1-3 pm`, `2026-11-28 14:00`. Without
 * am or pm an hour before seven is of the afternoon. Undefined where no time is named: it is then
 * shown as it stands, and sorted last.
 */
export function windowOf(text: string): Window | undefined {
  const [day] = /\d{4}-\d\d-\d\d/.exec(text) ?? [];
  const rest = (day === undefined ? text : text.replace(day, ' ')).replace(/^T/u, '');
  const [first, second] = [...rest.matchAll(TIME)].map(clockOf);
  if (!first) return undefined;
  const afternoon = (clock: Clock) =>
    !clock.full && clock.minute < EARLIEST * 60 ? clock.minute + NOON : clock.minute;
  const end = second && (second.half ? inHalf(second, second.half) : afternoon(second));
  let from = afternoon(first);
  if (first.half) from = inHalf(first, first.half);
  else if (second?.half && !first.full && first.minute <= NOON + 59 && end !== undefined) {
    // `1-3 pm` begins in the afternoon, `8-12 pm` in the morning.
    const same = inHalf(first, second.half);
    from = same <= end ? same : inHalf(first, 'a');
  }
  const to = end !== undefined && end > from ? end : undefined;
  return { ...(day === undefined ? {} : { day }), from, ...(to === undefined ? {} : { to }) };
}
