/**
 * The preview's state: the text in the field and what came with it, kept in the address; what
 * came in own words lies in the tab.
 */
import { createMemo, createSignal, type Accessor } from 'solid-js';
import { defined } from '../../defined.ts';
import { fragmentHash, parseFragment } from '../../address/fragment.ts';
import type { Fragment, FragmentProblem } from '../../address/fragment.ts';
import type { Codebooks } from '../../note/codebook.ts';
import { restoreFreeText, forAddress, stashFreeText } from '../shared/free-text.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import { readCode } from '../../note/read.ts';
import type { Reading } from '../../note/types.ts';

export interface PreviewState {
  readonly code: Accessor<string>;
  readonly reading: Accessor<Reading | undefined>;
  /**
   * Whether the code counts as entered. While it is typed, only an exact reading
   * is shown: a half-typed code is no mistake.
   */
  readonly settled: Accessor<boolean>;
  /** What came with the code in the long form, as long as it is that code's. */
  readonly extras: Accessor<Extras>;
  readonly problems: Accessor<readonly FragmentProblem[]>;
  /** What the person said of the code: confirmed it, or rejected the repair. */
  readonly said: Accessor<'confirmed' | 'rejected' | undefined>;
  type(code: string): void;
  settle(): void;
  /** Take over a scanned address's fragment. */
  openAddress(hash: string): void;
  say(what: 'confirmed' | 'rejected'): void;
}

export type Extras = Pick<Fragment, 'error' | 'model' | 'remark'>;

/** @param addBooks fills the codebooks: with the first code */
export function createPreviewState(
  codebooks: Codebooks,
  addBooks: () => Promise<void>,
): PreviewState {
  const [whole, setWhole] = createSignal(false);
  const [code, setCode] = createSignal('');
  const [settled, setSettled] = createSignal(false);
  const [said, setSaid] = createSignal<'confirmed' | 'rejected'>();
  const [came, setCame] = createSignal(parseFragment(''));
  /** Under which key the tab keeps what came in own words. */
  let stored: string | undefined;

  const read = (text: string) => {
    if (text.trim() === '') return undefined;
    if (whole()) return readCode(text, codebooks);
    const added = () => setWhole(true);
    void addBooks().then(added, added);
    return undefined;
  };
  const reading = createMemo(() => read(code()));
  const cameAs = createMemo(() => read(came().fragment.code ?? ''));

  /** A model number must not stay on the page when the next caller's code is typed. */
  const extras = createMemo((): Extras => {
    const [now, then] = [reading(), cameAs()];
    // Until it can be read, a code is the one that came as long as its text is.
    if (!now && (whole() || code() !== came().fragment.code)) return {};
    const other = now && now.kind !== 'refused' && then && then.kind !== 'refused';
    if (other && now.code !== then.code) return {};
    const { error, model, remark } = came().fragment;
    return defined({ error, model, remark });
  });

  const store = () => {
    const text = code().trim();
    const now = stashFreeText({
      journey: [],
      details: {},
      ...defined({ code: text === '' ? undefined : text, stored }),
      ...extras(),
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
      if (text.trim() === '') setCame(parseFragment(''));
      setCode(text);
      setSettled(false);
      setSaid(undefined);
      store();
    },
    settle: () => setSettled(true),
    openAddress(hash) {
      openAddress(hash);
      store();
    },
    say(what) {
      const now = reading();
      if (what === 'confirmed' && now?.kind === 'repaired') setCode(now.code);
      setSaid(what);
      store();
    },
  };
}
