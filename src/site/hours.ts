/** The firm's hours in a language's words, for pages that run no script. */
import { firm } from '../content/load.ts';
import { days } from '../content/schema/firm.ts';
import type { Hours, Spans } from '../content/schema/firm.ts';
import { nameOfDay, timeOfDay } from '../app/shared/open-now.ts';
import { eachOnce } from '../once.ts';
import { words } from './words.ts';

/** Days in a row with the same spans. */
interface Run {
  readonly from: number;
  readonly until: number;
  readonly spans: Spans;
}

function runs(open: Hours['open']): readonly Run[] {
  return days.reduce<readonly Run[]>((list, day, at) => {
    const spans = open[day] ?? [];
    if (spans.length === 0) return list;
    const last = list.at(-1);
    const same = last?.until === at - 1 && JSON.stringify(last.spans) === JSON.stringify(spans);
    return same
      ? [...list.slice(0, -1), { ...last, until: at }]
      : [...list, { from: at, until: at, spans }];
  }, []);
}

/** `Monday to Friday, 7 AM to 7 PM; Saturday, 8 AM to 12 PM`, in a language; at the foot of every page. */
export const hoursTold = eachOnce((of: string): string => {
  const { language: locale, t } = words(of);
  const span = (from: string, until: string) =>
    from === until ? from : t('site:hours.span', { from, until });
  return runs(firm().hours.open)
    .map((run) =>
      t('site:hours.line', {
        days: span(nameOfDay(locale, run.from), nameOfDay(locale, run.until)),
        times: new Intl.ListFormat(locale).format(
          run.spans.map(([from, until]) => span(timeOfDay(locale, from), timeOfDay(locale, until))),
        ),
      }),
    )
    .join('; ');
});
