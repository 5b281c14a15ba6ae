/**
 * The preview's state: the text in the field and what came with it, kept in the address; what
 * came in own words lies in the tab.
 */
import { createMemo, createSignal } from 'solid-js';
import { defined } from '../../defined.ts';
import { fragmentHash, parseFragment, type Fragment } from '../../address/fragment.ts';
import { guideOfCode, readCode } from '../../note/read.ts';
import type { Release } from '../../note/release.ts';
import { embedded } from '../shared/embedded.ts';
import { fetchData } from '../shared/fetched.ts';
import { restoreFreeText, forAddress, stashFreeText } from '../shared/free-text.ts';
import type { makeLateBooks } from '../shared/late-books.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import { joined, readPasted, type Labels } from '../../visit/hand-over.ts';
import type { Caller } from '../../visit/job.ts';
import type { Newest } from './page.ts';

export type PreviewState = ReturnType<typeof createPreviewState>;

export interface Extras extends Pick<Fragment, 'error'> {
  readonly caller: Caller;
  /** Codes of the same visit's other problems, as they were given. */
  readonly also: readonly string[];
}

/** Every codebook is there. */
const ALL = Symbol('all');

/**
 * @param newest what of the newest release can be fetched alone
 * @param books the codebooks, empty until a code is to be read
 * @param labels what the lines of a job's text are called
 */
export function createPreviewState(
  newest: Newest | undefined,
  { codebooks, addBooks }: ReturnType<typeof makeLateBooks>,
  labels: Labels,
) {
  /** Undefined while there is none; a text where what is there is enough for this one alone. */
  const [ready, setReady] = createSignal<string | typeof ALL>();
  const [code, setCode] = createSignal('');
  /** As entered: while a code is typed only an exact reading is shown, as a half-typed one is no mistake. */
  const [settled, setSettled] = createSignal(false);
  /** What the person said of the code: confirmed it, or rejected the repair. */
  const [said, setSaid] = createSignal<'confirmed' | 'rejected'>();
  const [came, setCame] = createSignal(parseFragment(''));
  /** Of whom the code is, where that came along: in this page's memory only. */
  const [handed, setHanded] = createSignal<Caller>({});
  /** Under which key the tab keeps what came in own words. */
  let stored: string | undefined;

  /** A sound code of the newest release needs its guide's piece of it; all else every release. */
  let asked: string | undefined;
  const load = async (text: string): Promise<void> => {
    if (asked === text) return;
    asked = text;
    const guide = newest && guideOfCode(text, newest.release, newest.guides);
    const piece = newest?.files[guide ?? ''];
    const found = piece === undefined ? undefined : await fetchData(piece);
    const part = found?.ok ? await import('./NoteView.tsx').catch(() => undefined) : undefined;
    if (part && found?.ok && codebooks.size === 0) {
      const flags = embedded('flags') as string[];
      const books = part.makeCodebooks(found.value as Release[], flags);
      for (const [release, book] of books) codebooks.set(release, book);
      setReady(text);
      return;
    }
    await addBooks().catch(() => undefined);
    setReady(ALL);
  };
  const read = (text: string) => {
    if (text.trim() === '') return undefined;
    const now = ready();
    const found = now === ALL || now === text ? readPasted(text, codebooks, labels) : undefined;
    if (found && (now === ALL || found.reading.kind === 'exact')) return found;
    void load(now === undefined ? text : '');
    return undefined;
  };
  const pasted = createMemo(() => read(code()));
  const reading = () => pasted()?.reading;
  const cameAs = createMemo(() => read(came().fragment.code ?? '')?.reading);

  const also = () => ({ also: pasted()?.also ?? [] });
  /** A model number must not stay on the page when the next caller's code is typed. */
  const extras = createMemo((): Extras => {
    const [now, then] = [reading(), cameAs()];
    // Until it can be read, a code is the one that came as long as its text is.
    if (!now && (ready() === ALL || code() !== came().fragment.code))
      return { ...also(), caller: {} };
    const other = now && now.kind !== 'refused' && then && then.kind !== 'refused';
    if (other && now.code !== then.code) return { ...also(), caller: {} };
    const { error, model, remark } = came().fragment;
    return {
      ...also(),
      ...defined({ error }),
      caller: { ...handed(), ...defined({ model, remark }) },
    };
  });

  const store = () => {
    const text = code().trim();
    const { error, caller } = extras();
    const { model, remark } = caller;
    const now = stashFreeText({
      journey: [],
      details: {},
      ...defined({ code: text === '' ? undefined : text, stored }),
      ...defined({ error, model, remark }),
    });
    stored = now.stored;
    replaceHash(fragmentHash(forAddress(now)));
  };
  const openAddress = (hash: string) => {
    const parsed = parseFragment(hash);
    const { model, remark } = parsed.fragment;
    setCame({ ...parsed, fragment: restoreFreeText(parsed.fragment) });
    setCode(parsed.fragment.code ?? '');
    stored = parsed.fragment.stored;
    setSettled(true);
    setSaid(undefined);
    if (model ?? remark) store();
  };
  /** A code among other words takes their place in the field. */
  const take = () => {
    const text = code();
    if (readCode(text, codebooks).kind !== 'refused') return;
    const { reading: now, came: found, also: others = [] } = readPasted(text, codebooks, labels);
    const only =
      found?.code ?? (now.kind === 'refused' ? undefined : joined([now.code, ...others]));
    if (only === undefined) return;
    if (found) {
      const { model, remark, ...caller } = found.caller;
      const own = { code: only, ...defined({ error: found.error, model, remark }) };
      setCame({ fragment: { journey: [], details: {}, ...own }, problems: [] });
      setHanded(caller);
    }
    setCode(only);
    store();
  };
  openAddress(location.hash);
  addEventListener('hashchange', () => openAddress(location.hash));

  return {
    code,
    reading,
    settled,
    extras,
    said,
    problems: () => came().problems,
    type(text: string): void {
      // An emptied field is for the next caller.
      if (text.trim() === '') {
        setCame(parseFragment(''));
        setHanded({});
      }
      setCode(text);
      setSettled(false);
      setSaid(undefined);
      store();
    },
    /** The text is whole: the code in it takes its place, and what came along is shown beside. */
    settle(): void {
      setSettled(true);
      if (reading()?.kind !== 'exact') void addBooks().then(take, take);
    },
    /** Take over an address's fragment. */
    openAddress(hash: string): void {
      openAddress(hash);
      store();
    },
    say(what: 'confirmed' | 'rejected'): void {
      const now = reading();
      if (what === 'confirmed' && now?.kind === 'repaired')
        setCode(joined([now.code, ...also().also]));
      setSaid(what);
      store();
    },
  };
}
