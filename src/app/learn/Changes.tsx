import { For, Show, type JSX } from 'solid-js';
import { movesOf, type Change } from '../../diagnosis/learn.ts';
import { sayer } from '../shared/words.ts';
import type { LearnPart, Page } from './page.ts';

/** What would change, in words. */
export function Changes(props: {
  readonly page: Page;
  readonly part: LearnPart;
  readonly changes: readonly Change[];
}): JSX.Element {
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
  const what = ({ subject }: Change, place: number): string =>
    subject.kind === 'faults'
      ? fault(subject.faults[place] ?? '')
      : answer(subject.key, subject.answers[place] ?? '');
  return (
    <Show when={props.changes.length > 0}>
      <section class="card changes">
        <h2>{t('learn:changes.title')}</h2>
        <For each={props.changes}>
          {(change) => {
            const { told, small } = movesOf(change);
            return (
              <details>
                <summary>{title(change)}</summary>
                <Show when={conditions(change)}>{(text) => <p class="quiet">{text()}</p>}</Show>
                <ul>
                  <For each={told}>
                    {({ place, old, now }) => (
                      <li>
                        {t('learn:changes.move', {
                          ...{ what: what(change, place), old: percent(old), now: percent(now) },
                        })}
                      </li>
                    )}
                  </For>
                  <Show when={small > 0}>
                    <li class="quiet">{t('learn:changes.small', { count: small })}</li>
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
