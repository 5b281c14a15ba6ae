import fc from 'fast-check';
import type { Arbitrary } from 'fast-check';
import { actions, facts, helpers } from '../../../../src/guide/types.ts';
import type {
  Answer,
  AnswerId,
  Fact,
  Guide,
  GuideId,
  GuideNode,
  NodeId,
  Rule,
  TextId,
} from '../../../../src/guide/types.ts';

/** A draft of an answer: `ahead` counts nodes on, 1 for the next. */
interface AnswerDraft {
  readonly ahead: number;
  readonly flag: string | undefined;
  readonly heatEnded: number | undefined;
  readonly sets: readonly Fact[];
  readonly clears: readonly Fact[];
}

/** What most answers say, so that guides that hold are not too rare among the drawn ones. */
const goodFacts: readonly Fact[] = [
  'inside-nothing',
  'door-not-forced',
  'cooled',
  'panel-ready',
  'stay-promised',
];

const oftenGood = fc.oneof(
  { weight: 4, arbitrary: fc.constant(goodFacts) },
  { weight: 2, arbitrary: fc.subarray([...goodFacts]) },
  { weight: 1, arbitrary: fc.subarray([...facts], { maxLength: 3 }) },
);
/** In another order than they are raised in. */
const flags = ['f2', 'error-seen', 'f0', 'f1'] as const;

const seldom = fc.oneof(
  { weight: 6, arbitrary: fc.constant<readonly Fact[]>([]) },
  { weight: 1, arbitrary: fc.subarray([...facts], { maxLength: 2 }) },
);

const answerDraft: Arbitrary<AnswerDraft> = fc.record({
  ahead: fc.oneof(
    { weight: 30, arbitrary: fc.integer({ min: 1, max: 4 }) },
    // Back to an earlier node or to itself: a loop; or far past the end: a name of no node.
    { weight: 1, arbitrary: fc.constantFrom(-1, 0, 99) },
  ),
  sets: oftenGood,
  clears: seldom,
  flag: fc.option(fc.constantFrom(...flags), { nil: undefined, freq: 4 }),
  heatEnded: fc.option(fc.constantFrom(0, 60, 240), { nil: undefined, freq: 4 }),
});

const middle = fc.record({
  kind: fc.constantFrom('question' as const, 'step' as const, 'step' as const),
  action: fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom(...actions) },
    { weight: 2, arbitrary: fc.constantFrom('breaker' as const, 'door-by-hand' as const) },
  ),
  heat: fc.oneof(
    { weight: 4, arbitrary: fc.constant(false) },
    { weight: 1, arbitrary: fc.constant(true) },
  ),
  takesError: fc.oneof(
    { weight: 9, arbitrary: fc.constant(false) },
    { weight: 1, arbitrary: fc.constant(true) },
  ),
  answers: fc.array(answerDraft, { minLength: 0, maxLength: 3 }),
  borrows: fc.oneof(
    { weight: 5, arbitrary: fc.constant(false) },
    { weight: 1, arbitrary: fc.constant(true) },
  ),
  unsure: fc.oneof(
    { weight: 15, arbitrary: fc.constant(true) },
    { weight: 1, arbitrary: fc.constant(false) },
  ),
});

const ending = fc.record({
  kind: fc.constantFrom('stop' as const, 'stop' as const, 'finish' as const),
  call: fc.oneof(
    { weight: 5, arbitrary: fc.constant(['emergency', 'technician'] as const) },
    { weight: 1, arbitrary: fc.subarray([...helpers], { maxLength: 2 }) },
  ),
  urgency: fc.constantFrom(
    'emergency' as const,
    'today' as const,
    'soon' as const,
    'none' as const,
  ),
  done: fc.boolean(),
  breakerStaysOff: fc.boolean(),
});

const page = fc.integer({ min: 0, max: 4 }).map((place) => `n${place}`);
const answerName = fc
  .tuple(page, fc.constantFrom('a0', 'a1', 'unsure'))
  .map((two) => two.join('.'));
const rule: Arbitrary<Rule> = fc.oneof(
  fc.record({ kind: fc.constant('most' as const), page, most: fc.constantFrom(1, 1, 2) }),
  fc.record({ kind: fc.constant('needs' as const), page, answer: answerName }),
  fc.record(
    { kind: fc.constant('never-after' as const), page, answer: answerName, unless: answerName },
    { requiredKeys: ['kind', 'page', 'answer'] },
  ),
  fc.record({
    kind: fc.constant('ends-at' as const),
    answer: answerName,
    ends: fc.array(page, { minLength: 1, maxLength: 3 }),
  }),
);

/** Slips in the danger question, each seldom. */
const slip = fc.oneof(
  { weight: 8, arbitrary: fc.constant('no slip' as const) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      'swapped' as const,
      'goes on' as const,
      'exit lost' as const,
      'unasked' as const,
    ),
  },
);

const blank = {
  answers: [],
  heat: false,
  takesError: false,
  call: [],
  urgency: 'none',
  breakerStaysOff: false,
} as const;

const RANDOM = 'random' as GuideId;

function named(id: string): Pick<GuideNode, 'id' | 'guide' | 'page' | 'sentences'> {
  return { id: id as NodeId, guide: RANDOM, page: id, sentences: id as TextId };
}

function answerTo(id: string, to: string, draft?: AnswerDraft): Answer {
  return {
    id: id as AnswerId,
    to: to as NodeId,
    sets: draft?.sets ?? [],
    clears: draft?.clears.filter((fact) => !draft.sets.includes(fact)) ?? [],
    ...(draft?.flag === undefined ? {} : { flag: draft.flag }),
    ...(draft?.heatEnded === undefined ? {} : { heatEnded: draft.heatEnded }),
  };
}

/**
 * Small guides, sound and unsound: at most 6 pages after the danger question, 3 ends.
 * About one in fifteen answers makes a loop or leads nowhere.
 */
export const randomGuide: Arbitrary<Guide> = fc
  .record({
    middles: fc.array(middle, { minLength: 1, maxLength: 6 }),
    endings: fc.array(ending, { minLength: 1, maxLength: 3 }),
    slip,
    rules: fc.oneof(fc.constant([]), fc.array(rule, { minLength: 1, maxLength: 2 })),
  })
  .map(({ middles, endings, slip: made, rules }) => {
    const count = middles.length + endings.length;
    const idAt = (place: number): string =>
      place > 90 ? 'nowhere' : `n${Math.min(count - 1, Math.max(0, place))}`;
    const swapped = made === 'swapped' ? ['stop-gas', 'stop-fire'] : ['stop-fire', 'stop-gas'];
    const dangers = [
      answerTo('fire', swapped[0] ?? ''),
      answerTo('gas', made === 'goes on' ? 'n0' : (swapped[1] ?? '')),
    ].slice(0, made === 'unasked' ? 1 : 2);
    const start: GuideNode = {
      ...named('start'),
      ...blank,
      kind: 'question',
      answers: [...dangers, answerTo('unsure', 'stop-unsure'), answerTo('none', 'n0')],
    };
    const pages = middles.map((draft, place): GuideNode => {
      const answers = draft.answers.map((answer, index) =>
        answerTo(`a${index}`, idAt(place + answer.ahead), answer),
      );
      const unsure = answerTo('unsure', idAt(place + 1), draft.answers[0]);
      return {
        ...blank,
        ...named(`n${place}`),
        ...(draft.borrows ? { sentences: 'n0' as TextId } : {}),
        kind: draft.kind,
        answers: draft.unsure ? [...answers, unsure] : answers,
        ...(draft.kind === 'step' ? { action: draft.action } : {}),
        heat: draft.kind === 'step' && draft.heat,
        takesError: draft.takesError,
      };
    });
    const ends = endings.map((draft, place): GuideNode => ({
      ...blank,
      ...named(`n${middles.length + place}`),
      kind: draft.kind,
      call: draft.kind === 'stop' ? draft.call : [],
      urgency: draft.urgency,
      breakerStaysOff: draft.kind === 'stop' && draft.breakerStaysOff,
      ...(draft.kind === 'finish' && draft.done ? { done: true as const } : {}),
      ...(draft.kind === 'stop' && draft.breakerStaysOff ? { flag: 'f1' } : {}),
    }));
    const stops = ['fire', 'gas', 'unsure'].map((danger): GuideNode => ({
      ...blank,
      ...named(`stop-${danger}`),
      kind: 'stop',
      call: ['emergency'],
      urgency: 'emergency',
      danger: danger as AnswerId,
    }));
    const nodes = [start, ...pages, ...ends, ...stops];
    return {
      id: RANDOM,
      start: start.id,
      nodes: new Map(nodes.map((node) => [node.id, node])),
      exits: made === 'exit lost' ? dangers.slice(1) : dangers,
      flags,
      tracks: ['only'],
      rules,
    };
  });
