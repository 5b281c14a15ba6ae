/** The journey of a call: its answers, what of it is shown, and which cautions were read out. */
import { batch, createMemo, createSignal } from 'solid-js';
import { formatJourney } from '../../address/journey-text.ts';
import {
  answerDanger,
  change,
  emptyJourney,
  pageKey,
  takeOver,
  takeUp,
  type EditableJourney,
} from '../../journey/edit.ts';
import { edgeAt, trace } from '../../journey/trace.ts';
import type { Given, GraphNode, Journey } from '../../guide/types.ts';
import type { CodebookGuide } from '../../note/codebook.ts';
import type { Facts } from '../../placeholders.ts';
import type { Key } from '../shared/keys.ts';
import type { Words } from '../shared/words.ts';
import { nodeWords } from '../shared/content-words.ts';
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

/**
 * @param answered after an answer that changed the journey; told how it was before
 * @param eachOf the answer that says that each line of a node's help is true
 */
export function createJourney(
  words: Words,
  guide: CodebookGuide,
  say: (told?: DeskStatus) => void,
  answered: (before: EditableJourney) => void,
  eachOf: (node: GraphNode) => string | undefined = () => undefined,
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

  const elsewhereKey = (one: GraphNode) => `${pageKey(one)} elsewhere`;
  /** The conditions of an answer, each ticked by itself. */
  const conditions = (one: GraphNode) =>
    eachOf(one) === undefined ? [] : nodeWords(words, guide, one).help;
  const conditionKey = (one: GraphNode, index: number) => `${pageKey(one)} ${String(index)}`;
  const isTrue = (index: number) => read().has(conditionKey(node(), index));
  const nextCondition = () => conditions(node()).findIndex((_, index) => !isTrue(index));

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
    if (answer === eachOf(node()) && nextCondition() >= 0) {
      say({ key: 'desk:status.eachFirst' });
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
      answered(before);
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
    /** The journey so far was walked on the caller's own device, which showed its cautions. */
    shownElsewhere(): void {
      const { steps, end, state } = traced();
      const nodes = [...steps.map(({ node: one }) => one), ...(state === 'open' ? [] : [end])];
      setRead(new Set([...read(), ...nodes.map((one) => elsewhereKey(one))]));
    },
    wasShownElsewhere: (one: GraphNode) => read().has(elsewhereKey(one)),
    conditions: () => conditions(node()),
    isTrue,
    /** Mark that a condition is true, or take that back. */
    mark(index: number): void {
      const key = conditionKey(node(), index);
      const others = [...read()].filter((one) => one !== key);
      setRead(new Set(isTrue(index) ? others : [...others, key]));
      say();
    },
    /** Pages whose cautions were read out, and conditions that are true. */
    read: () => [...read()],
    /** An answer the caller gave before its question was asked. */
    ahead(given: Given): void {
      const before = edited();
      setEdited(takeUp(guide, before, given));
      answered(before);
      say({ key: 'desk:status.ahead' });
    },
    /** As it was before an answer. */
    restore(before: EditableJourney): void {
      setEdited(before);
      look(before.journey.length === 0 ? DANGER : NOW);
    },
    /** Begin a call with answers given before; says whether all of them fit. */
    open(journey: Journey, pages: readonly string[] = []): boolean {
      dangerAsked = false;
      setRead(new Set(pages));
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
      const next = mustRead() ? -1 : nextCondition();
      const key = next < 0 ? pageKey(node()) : conditionKey(node(), next);
      setRead(new Set([...read(), key]));
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
