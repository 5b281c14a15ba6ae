import { For, type JSX } from 'solid-js';
import { stepWords } from '../shared/content-words.ts';
import { sayer } from '../shared/words.ts';
import { wordsOf } from './facts.ts';
import type { LoadProps } from './props.ts';
import type { Listed } from './state.ts';
import { Expected, Rest, Who } from './VisitRow.tsx';

/** A page a visit, on paper only: what is known, and lines to write on. */
export function Sheets(props: LoadProps): JSX.Element {
  const t = sayer(props);
  const answers = (visit: Listed): readonly string[] => {
    const { seen } = visit;
    const words = wordsOf(props.page, visit);
    if (!seen) return [];
    return seen.steps.map((step) => {
      const [asked, answer] = stepWords(words, seen.guide, step);
      return t('job:line', { asked, answer });
    });
  };
  return (
    <div class="sheets">
      <For each={props.route.visits()}>
        {(visit, place) => (
          <section data-urgency={visit.seen?.urgency ?? 'open'}>
            <p class="quiet">{t('round:sheet.title', { place: place() + 1 })}</p>
            <Who {...props} visit={visit} />
            <Expected {...props} visit={visit} />
            <Rest {...props} visit={visit} />
            <p class="told">{answers(visit).join(' · ')}</p>
            <dl class="blanks">
              <For each={['model', 'found', 'parts', 'minutes', 'remark', 'signed'] as const}>
                {(line) => (
                  <div class={line}>
                    <dt>{t(`round:sheet.${line}`)}</dt>
                    <dd />
                  </div>
                )}
              </For>
            </dl>
          </section>
        )}
      </For>
    </div>
  );
}
