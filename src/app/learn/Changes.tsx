import { For, Show, type JSX } from 'solid-js';
import type { Change } from '../../diagnosis/learn.ts';
import { sayer } from '../shared/words.ts';
import type { LearnPart, Page } from './page.ts';

/** Figures that move by less of themselves are only counted. */
const TOLD = 0.05;

interface Props {
  readonly page: Page;
  readonly part: LearnPart;
  readonly changes: readonly Change[];
}

/** What would change, in words. */
export function Changes(props: Props): JSX.Element {
  const t = sayer(props);
  const percent = (share: number) =>
    new Intl.NumberFormat(props.page.words.language, {
      style: 'percent',
      maximumFractionDigits: 1,
    }).format(share);
  const fault = (id: string) => props.part.faults[id] ?? id;
  const answer = (key: string, id: string) => props.part.questions[key]?.answers[id] ?? id;
  const title = ({ subject, seen }: Change): string => {
    if (subject.kind === 'faults') return t('learn:changes.faults', { count: seen });
    const { key, faults } = subject;
    return t('learn:changes.answers', {
      count: seen,
      question: props.part.questions[key]?.title ?? key,
      faults: faults ? faults.map(fault).join(', ') : t('learn:changes.others'),
    });
  };
  const conditions = ({ subject }: Change): string =>
    Object.entries(subject.kind === 'answers' ? (subject.given ?? {}) : {})
      .map(([key, ids]) =>
        t('learn:changes.given', {
          question: props.part.questions[key]?.title ?? key,
          answers: ids.map((id) => answer(key, id)).join(' / '),
        }),
      )
      .join(' ');
  const moved = ({ subject, before, after }: Change) =>
    after.flatMap((now, place) => {
      const old = before[place] ?? NaN;
      if (now === old) return [];
      const what =
        subject.kind === 'faults'
          ? fault(subject.faults[place] ?? '')
          : answer(subject.key, subject.answers[place] ?? '');
      return [{ what, old, now, told: Math.abs(now - old) >= TOLD * old }];
    });
  return (
    <Show when={props.changes.length > 0}>
      <section class="card changes">
        <h2>{t('learn:changes.title')}</h2>
        <For each={props.changes}>
          {(change) => {
            const told = moved(change).filter((one) => one.told);
            const rest = moved(change).length - told.length;
            return (
              <details>
                <summary>{title(change)}</summary>
                <Show when={conditions(change)}>{(text) => <p class="quiet">{text()}</p>}</Show>
                <ul>
                  <For each={told}>
                    {({ what, old, now }) => (
                      <li>
                        {t('learn:changes.move', { what, old: percent(old), now: percent(now) })}
                      </li>
                    )}
                  </For>
                  <Show when={rest > 0}>
                    <li class="quiet">{t('learn:changes.small', { count: rest })}</li>
                  </Show>
                </ul>
              </details>
            );
          }}
        </For>
      </section>
    </Show>
  );
}
