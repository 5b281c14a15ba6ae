/**
 * The preview's state: the text in the field and what came with it, kept in the address; what
 * came in own words lies in the tab.
 */
import { createMemo, createSignal, type Accessor } from 'solid-js';
import { defined } from '../../defined.ts';
import { fragmentHash, parseFragment } from '../../address/fragment.ts';
import type { Fragment, FragmentProblem } from '../../address/fragment.ts';
import { readCode } from '../../note/read.ts';
import type { Codebooks } from '../../note/codebook.ts';
import { restoreFreeText, forAddress, stashFreeText } from '../shared/free-text.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import type { Reading } from '../../note/types.ts';
import { joined, readPasted, type Labels } from '../../visit/hand-over.ts';
import type { Caller } from '../../visit/job.ts';

export interface PreviewState {
  readonly code: Accessor<string>;
  readonly reading: Accessor<Reading | undefined>;
  /**
   * Whether the code counts as entered. While it is typed, only an exact reading
   * is shown: a half-typed code is no mistake.
   */
  readonly settled: Accessor<boolean>;
  /** What came along with the code, as long as it is that code's. */
  readonly extras: Accessor<Extras>;
  readonly problems: Accessor<readonly FragmentProblem[]>;
  /** What the person said of the code: confirmed it, or rejected the repair. */
  readonly said: Accessor<'confirmed' | 'rejected' | undefined>;
  type(code: string): void;
  /** The text is whole: the code in it takes its place, and what came along is shown beside. */
  settle(): void;
  /** Take over an address's fragment. */
  openAddress(hash: string): void;
  say(what: 'confirmed' | 'rejected'): void;
}

export interface Extras extends Pick<Fragment, 'error'> {
  readonly caller: Caller;
  /** Codes of the same visit's other problems, as they were given. */
  readonly also: readonly string[];
}

/**
 * @param addBooks fills the codebooks: with the first code
 * @param labels what the lines of a job's text are called
 */
export function createPreviewState(
  codebooks: Codebooks,
  addBooks: () => Promise<void>,
  labels: Labels,
): PreviewState {
  const [whole, setWhole] = createSignal(false);
  const [code, setCode] = createSignal('');
  const [settled, setSettled] = createSignal(false);
  const [said, setSaid] = createSignal<'confirmed' | 'rejected'>();
  const [came, setCame] = createSignal(parseFragment(''));
  /** Of whom the code is, where that came along: in this page's memory only. */
  const [handed, setHanded] = createSignal<Caller>({});
  /** Under which key the tab keeps what came in own words. */
  let stored: string | undefined;

  const read = (text: string) => {
    if (text.trim() === '') return undefined;
    if (whole()) return readPasted(text, codebooks, labels);
    const added = () => setWhole(true);
    void addBooks().then(added, added);
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
    if (!now && (whole() || code() !== came().fragment.code)) return { ...also(), caller: {} };
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
    type(text) {
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
    settle() {
      setSettled(true);
      void addBooks().then(take, take);
    },
    openAddress(hash) {
      openAddress(hash);
      store();
    },
    say(what) {
      const now = reading();
      if (what === 'confirmed' && now?.kind === 'repaired')
        setCode(joined([now.code, ...also().also]));
      setSaid(what);
      store();
    },
  };
}
