import { For, Show, createMemo, createResource, createSignal, onCleanup, type JSX } from 'solid-js';
import { fail, ok } from '../../result.ts';
import { AskTwice } from '../shared/AskTwice.tsx';
import { FileButton } from '../shared/FileButton.tsx';
import { download } from '../shared/download.ts';
import { sayer } from '../shared/words.ts';
import { guideName } from '../shared/content-words.ts';
import { names } from '../shared/staff-words.ts';
import type { Page } from '../preview/page.ts';
import { figuresOf } from './figures.ts';
import {
  asFile,
  brokenFile,
  fileText,
  fromFile,
  type ModelOf,
  type ImportProblem,
  type StoredVisit,
} from './stored.ts';
import { add, all, clear, onChange, remove, type StoreProblem } from './store.ts';
import { foundName, problemLines } from './words.ts';

/** Visits of a guide listed at once: thousands would hold the page up for seconds. */
const SHOWN = 100;

/** The visits kept on this device: look, take out, write to a file, add from a file. */
export function Visits(props: { readonly page: Page }): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const [found, { refetch }] = createResource(all);
  const [problems, setProblems] = createSignal<readonly (ImportProblem | StoreProblem)[]>([]);
  const [said, setSaid] = createSignal('');
  let status: HTMLElement | undefined;

  const stored = (): readonly StoredVisit[] => (found.latest?.ok ? found.latest.value.visits : []);
  const broken = (): readonly unknown[] => (found.latest?.ok ? found.latest.value.broken : []);
  const [most, setMost] = createSignal(SHOWN);
  onCleanup(onChange(() => void refetch()));
  /** What went wrong last, or that nothing can be read here at all. */
  const told = () => [
    ...problems(),
    ...(problems().length === 0 && found.latest?.ok === false ? [found.latest.error] : []),
  ];

  const guides = createMemo(() => [...new Set(stored().map(({ guide }) => guide))]);
  const of = (guide: string) => stored().filter((one) => one.guide === guide);
  /** Guide → its words. Until they have come, ids stand for names. */
  const [named] = createResource(guides, async (wanted) => {
    const found = await Promise.all(wanted.map((guide) => figuresOf(props.page, guide)));
    return new Map(
      found.flatMap((one, index) => (one.ok ? [[wanted[index], one.value.words] as const] : [])),
    );
  });
  const wordsOf = (guide: string) => named.latest?.get(guide) ?? words();
  const done = (outcome: StoreProblem | undefined, words: string) => {
    setProblems(outcome ? [outcome] : []);
    setSaid(outcome ? '' : words);
    // The button that was pressed may be gone.
    status?.focus();
    void refetch();
  };
  const modelOf: ModelOf = async (guide) => {
    const figures = await figuresOf(props.page, guide);
    return figures.ok ? ok(figures.value.model) : figures;
  };
  const take = async (file: File) => {
    setSaid('');
    const text = await fileText(file);
    const read = text.ok ? await fromFile(text.value, modelOf) : fail([text.error]);
    if (!read.ok) {
      setProblems(read.error);
      return;
    }
    const added = await add(read.value);
    if (!added.ok) {
      done(added.error, '');
      return;
    }
    const known = read.value.length - added.value;
    done(
      undefined,
      [
        t('visits:list.added', { count: added.value }),
        ...(known > 0 ? [t('visits:list.known', { count: known })] : []),
      ].join(' '),
    );
  };

  return (
    <div class="visits">
      <p>{t('visits:list.lead')}</p>
      <p role="status" tabindex="-1" ref={(element) => (status = element)}>
        {said()}
      </p>
      <Show when={told().length > 0}>
        <div role="alert" class="trouble">
          <ul>
            <For each={problemLines(words(), told())}>{(line) => <li>{line}</li>}</For>
          </ul>
        </div>
      </Show>
      <For each={guides()} fallback={<p class="quiet">{t('visits:list.none')}</p>}>
        {(guide) => (
          <>
            <h3>{guideName(wordsOf(guide), guide)}</h3>
            <Show when={of(guide).length > most()}>
              <p>
                <button type="button" class="plain" onClick={() => setMost(most() + SHOWN)}>
                  {t('visits:list.earlier', { count: Math.min(SHOWN, of(guide).length - most()) })}
                </button>
              </p>
            </Show>
            <ol start={Math.max(1, of(guide).length - most() + 1)}>
              <For each={of(guide).slice(-most())}>
                {({ id, code, visit }) => (
                  <li>
                    <span>
                      {foundName(wordsOf(guide), visit.fault)}
                      <span class="quiet">
                        {names(wordsOf(guide), 'parts', visit.parts) || t('preview:load.noParts')}
                        {'. '}
                        {t('visits:list.answers', {
                          count: Object.keys(visit.answers).length,
                        })}{' '}
                        <bdi>{[code, visit.remark].filter(Boolean).join(' · ')}</bdi>
                      </span>
                    </span>
                    <button
                      type="button"
                      class="plain"
                      onClick={() =>
                        void remove(id).then((gone) =>
                          done(gone.ok ? undefined : gone.error, t('visits:list.removed')),
                        )
                      }
                    >
                      {t('visits:list.remove')}
                    </button>
                  </li>
                )}
              </For>
            </ol>
            <p>
              <button
                type="button"
                onClick={() =>
                  download(`visits-${guide}.json`, asFile(guide, stored()), 'application/json')
                }
              >
                {t('visits:list.export', { count: of(guide).length })}
              </button>
            </p>
          </>
        )}
      </For>
      <Show when={broken().length > 0}>
        <p class="trouble">{t('visits:list.broken', { count: broken().length })}</p>
        <p>
          <button
            type="button"
            onClick={() =>
              download('visits-damaged.json', brokenFile(broken()), 'application/json')
            }
          >
            {t('visits:list.exportBroken')}
          </button>
        </p>
      </Show>
      <div class="ways">
        <FileButton label={t('visits:list.import')} accept="application/json,.json" onFile={take} />
        <Show when={stored().length + broken().length > 0}>
          <AskTwice
            label={t('visits:list.clear')}
            sure={t('visits:list.clearSure', { count: stored().length + broken().length })}
            keep={t('visits:list.keep')}
            onYes={() =>
              void clear().then((gone) =>
                done(gone.ok ? undefined : gone.error, t('visits:list.cleared')),
              )
            }
          />
        </Show>
      </div>
    </div>
  );
}
