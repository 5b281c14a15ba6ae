import { Show, createMemo, createSignal, onCleanup } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { parseFragment } from '../../address/fragment.ts';
import { codebookGuide, makeCodebooks } from '../../note/codebook.ts';
import type { NoteCode } from '../../note/types.ts';
import { Fetching } from '../shared/Fetching.tsx';
import { embedded } from '../shared/embedded.ts';
import { createFetched } from '../shared/fetched.ts';
import { createLatePart } from '../shared/late-part.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import { tryStorage } from '../shared/storage.ts';
import { makeWords, pageWords } from '../shared/words.ts';
import { Choose } from './Choose.tsx';
import { beganBefore } from './address.ts';
import type { CallProps, Then } from './Call.tsx';
import { createCallList } from './calls.ts';
import { createCaller } from './caller.ts';
import { pageTime } from './clocks.ts';
import type { Keeper } from './keeper.ts';
import type { DeskConfig, DeskPart, Page, Shell } from './page.ts';
import type { DeskState, Found } from './state.ts';

/** Only a reload goes on with the same call; a copied or a new tab does not. */
function isReload(): boolean {
  const [entry] = performance.getEntriesByType('navigation');
  return (entry as PerformanceNavigationTiming | undefined)?.type === 'reload';
}

/** The tab's own storage, where the firm has switched it on and the browser has one. */
function keeperOf({ keepCaller }: DeskConfig): Keeper {
  return keepCaller === 'tab' ? tryStorage(() => sessionStorage) : undefined;
}

/** A call that has its guide: a new one of its own each time, so that nothing of another is left. */
interface Start extends Pick<CallProps, 'how' | 'record' | 'then'> {
  readonly guide: string;
}

/** One call after another: what the caller says chooses the guide, its desk does the rest. */
export function Calls(props: { readonly shell: Shell }) {
  // eslint-disable-next-line solid/reactivity -- what the page carries does not change
  const { shell } = props;
  const guides = Object.keys(shell.files);
  const [first = ''] = guides;
  const reloaded = isReload();
  const caller = createCaller(keeperOf(shell), !reloaded);
  const calls = createCallList(keeperOf(shell), !reloaded);
  /** When the call at hand began, before it has a guide. */
  let began = (reloaded ? beganBefore() : undefined) ?? pageTime();
  let live: DeskState | undefined;
  /** Codes of the caller's problems told before. */
  let also: readonly NoteCode[] = [];

  /** The guide an address is about; none where a new call begins and there is a choice. */
  const asked = (how: Found): Start | undefined => {
    const { guide = first, journey, code } = parseFragment(location.hash).fragment;
    const known = guides.includes(guide) ? guide : first;
    return guides.length < 2 || journey.length > 0 || code !== undefined
      ? { guide: known, how }
      : undefined;
  };
  const [start, setStart] = createSignal(asked(reloaded ? 'reload' : 'address'));

  /** The call at hand goes to the others, if there is anything of it; its place is empty then. */
  const leave = (held: boolean): void => {
    const empty = caller.isEmpty() && (live?.journey.length() ?? 0) === 0;
    const own = { hash: '', caller: caller.caller(), read: [], began, held, also, at: '' };
    if (!empty) calls.put(live?.record(held) ?? own);
    caller.clear();
    live = undefined;
    also = [];
    began = pageTime();
  };
  const next = (held: boolean): void => {
    leave(held);
    replaceHash('');
    setStart(asked('address'));
  };
  const take = (id: number): void => {
    leave(true);
    const record = calls.take(id);
    if (!record) return;
    caller.load(record.caller);
    ({ began, also = [] } = record);
    replaceHash('');
    setStart(
      record.guide === undefined ? undefined : { guide: record.guide, how: 'address', record },
    );
  };
  const takeBack = (): boolean => {
    const last = calls.list().find(({ held }) => !held);
    if (last) take(last.id);
    return last !== undefined;
  };
  /** The caller and the call go on, with nothing of the problem that has its code. */
  const another = (codes: readonly NoteCode[]): void => {
    if (live) calls.put(live.record(false));
    live = undefined;
    also = codes;
    replaceHash('');
    setStart(asked('address'));
  };
  const choose = (guide: string, then?: Then): void => {
    setStart({ guide, how: 'address', then });
  };
  const changed = (): void => {
    // What is in the fields belongs to the call the address had before.
    const { hash } = location;
    leave(false);
    replaceHash(hash);
    setStart(asked('address'));
  };
  addEventListener('hashchange', changed);
  onCleanup(() => removeEventListener('hashchange', changed));

  const part = createFetched<DeskPart>(() => shell.files[start()?.guide ?? '']);
  const late = createLatePart(
    () => start() !== undefined,
    async () => (await import('./Call.tsx')).Call,
  );
  const fetched = {
    ...part,
    problem: () => part.problem() ?? late.problem(),
    retry() {
      part.retry();
      late.retry();
    },
  };
  const [language, sayIn] = createSignal('');
  const spoken = createFetched<DeskPart>(
    () => shell.spoken[language()]?.files[start()?.guide ?? ''],
  );
  const said = createMemo(() => {
    const inOther = spoken.value();
    return inOther && makeWords({ language: language(), texts: inOther.texts });
  });
  const page = createMemo((): Page | undefined => {
    const loaded = part.value();
    const ownBooks = makeCodebooks(
      loaded?.release ? [loaded.release] : [],
      embedded('flags') as string[],
    );
    const [codebook] = ownBooks.values();
    if (!loaded || !codebook || !late.value()) return undefined;
    return {
      ...shell,
      ...loaded,
      ...{ codebook, ownBooks },
      words: pageWords(loaded.texts),
      said,
      sayIn,
    };
  });

  const around = {
    main: first,
    onOther: (guide: string, then: Then) => choose(guide, then),
    onNext: next,
    onAlso: another,
    takeBack,
  };
  const others = { list: calls.list, take };

  return (
    <Show
      when={start()}
      keyed
      fallback={
        <Choose
          page={shell}
          caller={caller}
          calls={others}
          onChoose={choose}
          onHold={() => next(true)}
          onUndo={takeBack}
        />
      }
    >
      {(chosen) => (
        <Show when={page()} keyed fallback={<Fetching words={shell.words} fetched={fetched} />}>
          {(loaded) => (
            <Show
              when={codebookGuide(loaded.codebook, chosen.guide)}
              fallback={<p class="told">{shell.words.t('desk:noBook')}</p>}
            >
              {(guide) => (
                <Dynamic
                  component={late.value()}
                  page={loaded}
                  guide={guide()}
                  {...{ how: chosen.how, record: chosen.record, then: chosen.then }}
                  {...{ caller, around, calls: others, began, also }}
                  onLive={(desk) => (live = desk)}
                />
              )}
            </Show>
          )}
        </Show>
      )}
    </Show>
  );
}
