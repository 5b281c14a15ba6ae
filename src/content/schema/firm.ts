import { z } from 'zod';
import type { Costs } from '../../diagnosis/types.ts';
import { helpers, switches } from '../../guide/types.ts';
import type { Switch } from '../../guide/types.ts';

/** Is what people read what is dialed? Before it may stand a country's code, in place of a leading 0. */
function isSame({ show, dial }: { readonly show: string; readonly dial: string }): boolean {
  const digits = show.normalize('NFKC').replace(/\D/g, '');
  const rest = dial.endsWith(digits) ? digits : digits.replace(/^0/, '');
  const before = dial.slice(0, -rest.length);
  return rest !== '' && dial.endsWith(rest) && (before === '' || /^\+\d{1,3}$|^\+$/.test(before));
}

const number = z
  .strictObject({
    /** As people read it. */
    show: z.string().min(1),
    /** As a `tel:` address dials it. */
    dial: z.string('put quotes around it').regex(/^\+?\d{2,15}$/, {
      error: 'digits only, for example +441134960142',
      abort: true,
    }),
  })
  .refine(isSame, 'the digits shown are not those dialed');

/** The same in every language, or said in each: language → text. */
const told = z.union(
  [z.string().min(1), z.record(z.string().regex(/^[a-z]{2}$/), z.string().min(1))],
  'a sentence, or one for each language',
);
export type Told = z.infer<typeof told>;

/** The days of a week as `Intl` names them, Monday first. */
export const days = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

/** When a firm is open on a day: minutes since midnight, in order. */
export type Spans = readonly (readonly [from: number, until: number])[];

const TIME = '(?:[01]\\d|2[0-3]):[0-5]\\d|24:00';
const SPANS = new RegExp(`^(?:${TIME})-(?:${TIME})(?:, ?(?:${TIME})-(?:${TIME}))*$`);

/** `08:00-12:00, 13:00-17:00`; `closed` is no span at all. */
const spans = z
  .string()
  .refine((text) => text === 'closed' || SPANS.test(text), {
    error: 'times as 08:00-17:30, several with a comma between them, or closed',
    abort: true,
  })
  .transform((text): Spans => {
    if (text === 'closed') return [];
    return text.split(',').map((span) => {
      const [from = 0, until = 0] = span.split('-').map((time) => {
        const [hours, minutes] = time.split(':').map(Number);
        return (hours ?? 0) * 60 + (minutes ?? 0);
      });
      return [from, until] as const;
    });
  })
  .refine(
    (list) => list.flat().every((time, at, all) => at === 0 || time > (all[at - 1] ?? 0)),
    'each time must be later than the one before it; what goes past midnight is two days’',
  );

function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

const hours = z.strictObject({
  zone: z.string().refine(isZone, 'a time zone’s name, for example Europe/London'),
  /** A day that is left out is closed. */
  open: z.partialRecord(z.enum(days, `a day is one of ${days.join(', ')}`), spans),
  /** Dates (ISO 8601) with other hours than their day of the week. */
  holidays: z.record(z.iso.date('a date as 2026-12-25'), spans).default({}),
});

/** When the firm is open. */
export type Hours = z.infer<typeof hours>;

const color = z.string().regex(/^#[0-9a-f]{6}$/i, 'a color as #336699');

const called = helpers.filter((helper) => helper !== 'technician');

/** The shape of `content/firm.yaml`: who runs this copy of the site. */
export const firmSchema = z.strictObject({
  name: z.string().min(1),
  /** In the header and under the installed app's icon; without it the name. */
  'short-name': z.string().min(1).max(24, 'at most 24 letters: it stands in the header').optional(),
  /** The firm is made up, and the about page says so. */
  demo: z.boolean('true or false').default(false),
  phone: number,
  /** Text messages. */
  text: number.optional(),
  email: z.email('an address as help@range.example').optional(),
  /** Where a visit is booked. */
  booking: z.url({ protocol: /^https$/, error: 'an address that begins with https://' }).optional(),
  /** What a visit costs before any repair. */
  'call-out': told.optional(),
  hours,
  /** What to do while the firm is closed. */
  'after-hours': told,
  area: told,
  /** A file in `content`: SVG or PNG. */
  logo: z
    .string()
    .regex(/^[\w-]+\.(?:svg|png)$/, 'a file’s name in the folder content, .svg or .png')
    .optional(),
  /** Buttons, links and drawings; the gates hold both to the contrast of ours. */
  colors: z.strictObject({ light: color, dark: color }).optional(),
  site: z
    .url({ protocol: /^https?$/, error: 'an address that begins with https://' })
    .refine((site) => !/[?#@]/.test(site), 'an address with nothing after its path'),
  /** Sites that may show this one in a frame. */
  frame: z
    .array(
      z.string().regex(/^https:\/\/[a-z0-9.-]+(?::\d+)?$/, 'a site as https://www.range.example'),
    )
    .default([]),
  /** A key of `content/regions.yaml`. */
  region: z.string().regex(/^[A-Z]{2}$/),
  /** The first one's pages have no prefix in their addresses. */
  languages: z
    .array(z.string().regex(/^[a-z]{2}$/))
    .min(1)
    .refine((all) => new Set(all).size === all.length, 'each language once'),
  /** The short self-clean that may free a door: off, the guide sends a technician instead. */
  'short-self-clean': z.boolean().default(true),
  desk: z
    .strictObject({
      /** Where the desk keeps what is written about a caller: nowhere, or in the tab until it closes. */
      'keep-caller': z.enum(['never', 'tab']),
    })
    .default({ 'keep-caller': 'never' }),
  /** Days after which a copy kept on a device, with no network, asks to be renewed before a guide is begun. */
  'renew-after': z.int().min(1).default(90),
  /** What loads are weighed with, in the money of the firm's region. */
  costs: z.strictObject({
    /** ISO 4217. */
    currency: z.string().regex(/^[A-Z]{3}$/, 'three letters, for example GBP'),
    'second-visit': z.number().positive(),
    'hourly-rate': z.number().positive(),
    /** Share of a part's price. */
    carrying: z.number().positive().max(1),
  }),
  numbers: z.record(z.enum(called), number),
});

export type Firm = z.infer<typeof firmSchema> & Readonly<Record<Switch, boolean>>;

/** The switches that are off. */
export function switchedOff(firm: Firm): readonly Switch[] {
  return switches.filter((name) => !firm[name]);
}

/** What loads are weighed with. */
export function costsOf({ costs }: Firm): Costs {
  const { currency, carrying, ...rest } = costs;
  return {
    ...{ currency, carrying },
    ...{ secondVisit: rest['second-visit'], hourlyRate: rest['hourly-rate'] },
  };
}
