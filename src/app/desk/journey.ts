/** The journey of a call: its answers, what of it is shown, and which cautions were read out. */
import { batch, createMemo, createSignal } from 'solid-js';
import { formatJourney } from '../../address/journey-text.ts';
import { answerDanger, change, emptyJourney, pageKey, takeOver } from '../../journey/edit.ts';
import { edgeAt, trace } from '../../journey/trace.ts';
import type { GraphNode, Journey } from '../../guide/types.ts';
import type { CodebookGuide } from '../../note/codebook.ts';
import type { Facts } from '../../placeholders.ts';
import type { Key } from '../shared/keys.ts';
import type { Words } from '../shared/words.ts';
import { cautionsOf, choicesOf } from './nodes.ts';

/** A sentence of the page to say, by its key. */
export interface DeskStatus {
  readonly key: Key;
  readonly facts?: Facts;
}

/** What stands in the middle: the danger question, a code to type in, or a place of the journey. */
export type View =
  | { readonly kind: 'danger' }
  /** `given` came with the address. */
  | { readonly kind: 'code'; readonly given: string | undefined }
  | { readonly kind: 'at'; readonly index: number };

const DANGER: View = { kind: 'danger' };
/** Wherever the journey ends. */
const NOW: View = { kind: 'at', index: Infinity };

export type JourneyStore = ReturnType<typeof createJourney>;

/** @param answered after an answer that changed the journey */
export function createJourney(
  words: Words,
  guide: CodebookGuide,
  say: (told?: DeskStatus) => void,
  answered: () => void,
) {
  const [edited, setEdited] = createSignal(emptyJourney);
  const [shown, setShown] = createSignal(DANGER);
  const [read, setRead] = createSignal<ReadonlySet<string>>(new Set());
  /** Danger comes first in every call, also in one that goes on. */
  let dangerAsked = false;

  const traced = createMemo(() => trace(guide, edited().journey));
  const length = () => edited().journey.length;
  const view = createMemo((): View => {
    const now = shown();
    return now.kind === 'at' ? { kind: 'at', index: Math.min(now.index, length()) } : now;
  });
  const node = createMemo(() => {
    const now = view();
    if (now.kind !== 'at') return guide.first;
    return traced().steps[now.index]?.node ?? traced().end;
  });
  const isRead = (one: GraphNode) => read().has(pageKey(one));
  const mustRead = () =>
    view().kind === 'at' && !isRead(node()) && cautionsOf(words, guide, node()).length > 0;

  const look = (to: View): void => {
    setShown(to);
    say();
  };
  const choose = (answer: string): void => {
    const now = view();
    if (now.kind === 'code' || !edgeAt(guide, node(), answer)) return;
    if (mustRead()) {
      say({ key: 'desk:status.careFirst' });
      return;
    }
    const before = edited();
    const again = now.kind === 'danger' && length() > 0;
    const index = now.kind === 'at' ? now.index : 0;
    const next = again ? answerDanger(guide, before, answer) : change(guide, before, index, answer);
    const place = again && next.journey.length > length() ? length() : index;
    const count = next.journey.length - place - 1;
    dangerAsked = true;
    batch(() => {
      setEdited(next);
      look(NOW);
      if (next === before) return;
      answered();
      if (count > 0) say({ key: 'desk:status.kept', facts: { count } });
    });
  };
  return {
    edited,
    length,
    traced,
    view,
    /** The node in the middle; at the danger question the guide's start. */
    node,
    /** Names what is in the middle: changes when something else is to be said. */
    spot: createMemo(() => {
      const now = view();
      return now.kind === 'at' ? `${node().id} ${String(now.index)}` : now.kind;
    }),
    /** The answer that stands there now, where the view goes back to one. */
    present() {
      const now = view();
      return edited().journey[now.kind === 'at' ? now.index : 0]?.answer;
    },
    /** Whether a node's cautions were read out in this call. */
    isRead,
    mustRead,
    /** Begin a call with answers given before; says whether all of them fit. */
    open(journey: Journey): boolean {
      dangerAsked = false;
      setRead(new Set<string>());
      setShown(DANGER);
      setEdited(takeOver(guide, journey));
      return formatJourney(edited().journey) === formatJourney(journey);
    },
    choose,
    press(key: string): void {
      if (view().kind === 'code' || node().answers.length === 0) return;
      const chosen = choicesOf(node()).find((choice) => choice.key === key);
      if (chosen) choose(chosen.edge.id);
      else say({ key: 'desk:status.noAnswer', facts: { nth: key } });
    },
    tick(): void {
      if (view().kind !== 'at') return;
      setRead(new Set([...read(), pageKey(node())]));
      say();
    },
    go(index: number): void {
      if (dangerAsked) look({ kind: 'at', index: Math.max(0, index) });
    },
    show(what: 'danger' | 'code' | 'now', given?: string): void {
      if (what === 'code') look({ kind: what, given });
      else look(what === 'now' && dangerAsked ? NOW : DANGER);
    },
  };
}
