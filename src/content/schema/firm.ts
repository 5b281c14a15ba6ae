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
    dial: z.string().regex(/^\+?\d{2,15}$/),
  })
  .refine(isSame, 'the digits shown are not those dialed');

/** The same in every language, or said in each: language → text. */
const told = z.union([
  z.string().min(1),
  z.record(z.string().regex(/^[a-z]{2}$/), z.string().min(1)),
]);

const called = helpers.filter((helper) => helper !== 'technician');

/** The emergency number of a region, where that is known here. */
const EMERGENCY: Readonly<Record<string, string>> = { US: '911', CA: '911', MX: '911' };

/** The shape of `content/firm.yaml`: who runs this copy of the site. */
export const firmSchema = z
  .strictObject({
    name: z.string().min(1),
    phone: number,
    hours: told,
    area: told,
    site: z
      .url({ protocol: /^https?$/ })
      .refine((site) => !/[?#@]/.test(site), 'an address with nothing after its path'),
    region: z.string().regex(/^[A-Z]{2}$/),
    units: z.strictObject({ temperature: z.enum(['F', 'C']) }),
    /** The first one's pages have no prefix in their addresses. */
    languages: z.array(z.string().regex(/^[a-z]{2}$/)).min(1),
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
      currency: z.string().regex(/^[A-Z]{3}$/),
      'second-visit': z.number().positive(),
      'hourly-rate': z.number().positive(),
      /** Share of a part's price. */
      carrying: z.number().positive().max(1),
    }),
    numbers: z.record(z.enum(called), number),
  })
  .refine(
    ({ region, numbers }) => [undefined, numbers.emergency.dial].includes(EMERGENCY[region]),
    {
      path: ['numbers', 'emergency', 'dial'],
      message: "not the emergency number of the firm's region",
    },
  );

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
