/** Each property broken by a guide as small as can be, in which all others hold: faults and journey. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../../src/guide/types.ts';
import { graphOf } from '../../../src/proof/graph.ts';
import { prove } from '../../../src/proof/prove.ts';
import { searchesOf } from '../../../src/proof/search.ts';
import { asks, broken, first, gone, guideOf, soon, sound, step, stop } from './broken.ts';
import type { Broken, Draft, More, Pages, Way, Ways } from './broken.ts';

type Row = readonly [name: string, broken: Broken, pages: Pages, more?: More];

const dangerFirst: readonly Row[] = [
  [
    'no first page',
    { 'danger-first': ['', 'start-missing danger'], 'journeys-end': ['', 'start-missing danger'] },
    { danger: gone, look: gone, 'stop-fire': gone, 'stop-unsure': gone, done: gone },
  ],
  [
    'a first page that is no question',
    { 'danger-first': ['', 'start-not-question danger'] },
    { danger: { ...sound['danger'], kind: 'step', action: 'look' } },
  ],
  [
    'no answer that goes on',
    { 'danger-first': ['', 'none-missing danger'] },
    { danger: first({}), look: gone, done: gone },
  ],
  [
    'a guide over at once',
    { 'danger-first': ['', 'none-missing danger'] },
    { danger: first({ none: 'done' }), look: gone },
  ],
  [
    'a way on that leads nowhere',
    { 'journeys-end': ['danger.none', 'leads-nowhere danger none nowhere'] },
    { danger: first({ none: 'nowhere' }), look: gone, done: gone },
  ],
  [
    'no danger to ask about',
    { 'danger-first': ['', 'no-danger-answers danger'] },
    { danger: { answers: { unsure: 'stop-unsure', none: 'look' } }, 'stop-fire': gone },
  ],
  ...(
    [
      ['a finish', { kind: 'finish' }],
      ['one for later', { urgency: 'soon', call: ['technician'] }],
      ['less urgent than whom it calls', { urgency: 'today' }],
      ['for no danger', { danger: undefined }],
      ['for another danger', { danger: 'unsure' }],
    ] as const
  ).map(([name, more]): Row => [
    `the end of a danger ${name}`,
    { 'danger-first': ['danger.fire', 'not-own-stop danger fire'] },
    { 'stop-fire': stop('fire', more) },
  ]),
  [
    'the end of a danger one for today',
    {},
    { 'stop-fire': stop('fire', { urgency: 'today', call: ['technician'] }) },
  ],
  [
    'the end of a danger without a first call for help',
    {
      'danger-first': ['danger.fire', 'not-own-stop danger fire'],
      'stops-call-and-warn': ['danger.fire', 'emergency-not-first stop-fire'],
    },
    { 'stop-fire': stop('fire', { call: ['technician', 'emergency'] }) },
  ],
  [
    'the end of a danger no end',
    {
      'danger-first': ['danger.fire', 'not-own-stop danger fire'],
      'journeys-end': ['danger.fire', 'end-goes-on stop-fire'],
    },
    { 'stop-fire': stop('fire', { answers: { on: 'done', fire: 'done' } }) },
  ],
  [
    'the end of a danger nowhere',
    {
      'danger-first': ['danger.fire', 'not-own-stop danger fire'],
      'journeys-end': [
        ...['danger.fire', 'leads-nowhere danger fire nowhere'],
        'leads-nowhere look fire nowhere',
      ],
    },
    { danger: first({ fire: 'nowhere', none: 'look' }), 'stop-fire': gone },
  ],
  [
    'two stops swapped',
    { 'danger-first': ['danger.fire', 'not-own-stop danger fire', 'not-own-stop danger gas'] },
    {
      danger: first({ fire: 'stop-gas', gas: 'stop-fire', none: 'look' }),
      'stop-gas': stop('gas'),
    },
  ],
  [
    'a stop for a danger that is not asked about',
    { 'danger-first': ['', 'danger-unasked stop-gas gas'] },
    { look: asks({ gas: 'stop-gas' }), 'stop-gas': stop('gas') },
  ],
  [
    'two faults, the one with the shorter journey first',
    {
      'danger-first': ['', 'danger-unasked stop-gas gas', 'not-own-stop danger fire'],
    },
    {
      look: asks({ gas: 'stop-gas' }),
      ...{ 'stop-gas': stop('gas'), 'stop-fire': stop('fire', { urgency: 'today' }) },
    },
  ],
  ['an exit that is lost', { 'danger-first': ['', 'exits-differ danger fire'] }, {}, { exits: {} }],
  [
    'an exit for no danger',
    { 'danger-first': ['', 'exits-differ danger gas'] },
    {},
    { exits: { fire: 'stop-fire', gas: 'stop-unsure' } },
  ],
  [
    'an exit to another stop',
    { 'danger-first': ['', 'exits-differ danger fire'] },
    {},
    { exits: { fire: 'stop-unsure' } },
  ],
];

const READY: readonly Fact[] = ['inside-nothing', 'door-not-forced', 'cooled'];
const but = (fact: Fact): readonly Fact[] => READY.filter((one) => one !== fact);
/** What was told before a step that heats, which may be gone from it. */
const heated = (sets: readonly Fact[], more: Draft = {}, quiet: Way = 'done'): Pages => ({
  look: asks({ well: { to: 'heat', sets } }),
  heat: step('set-knob', { quiet }, { heat: true, ...more }),
});
const next = asks();

const heat: readonly Row[] = [
  ['heat when all is well', {}, heated(READY)],
  ...READY.map((fact): Row => [
    `heat without ${fact}`,
    { 'heat-only-when-safe': ['danger.none look.well', `heat-without heat ${fact}`] },
    heated(but(fact)),
  ]),
  [
    'a cycle without a promise to stay',
    { 'heat-only-when-safe': ['danger.none look.well', 'heat-without heat stay-promised'] },
    heated(READY, { action: 'press-key' }),
  ],
  [
    'a cycle with someone who stays',
    {},
    heated([...READY, 'stay-promised'], { action: 'press-key' }),
  ],
  [
    'heat that one way leads to while hot',
    { 'heat-only-when-safe': ['danger.none look.hot', 'heat-without heat cooled'] },
    {
      ...heated(READY),
      look: asks({ well: { to: 'heat', sets: READY }, hot: { to: 'heat', sets: but('cooled') } }),
    },
  ],
  ...(['error-seen', 'inside-something', 'door-forced'] as const).map((fact): Row => [
    `heat after ${fact}, though it was taken back`,
    {
      'heat-only-when-safe': ['danger.none before.odd look.well', `heat-despite heat ${fact}`],
    },
    {
      ...heated(READY),
      danger: first({ none: 'before' }),
      before: { answers: { unsure: 'look', odd: { to: 'look', sets: [fact] } } },
      look: asks({ well: { to: 'heat', sets: READY, clears: [fact] } }),
    },
  ]),
  ['heat after other trouble', {}, heated([...READY, 'trouble-seen'])],
  [
    'heat again, cooled',
    {},
    {
      ...heated(READY, {}, { to: 'again', sets: ['cooled'] }),
      again: step('set-knob', {}, { heat: true }),
    },
  ],
  [
    'heat again, hot',
    { 'heat-only-when-safe': ['danger.none look.well heat.quiet', 'heat-without again cooled'] },
    {
      ...heated(READY, {}, { to: 'again', clears: ['cooled'] }),
      again: step('set-knob', {}, { heat: true }),
    },
  ],
  [
    'heat again, and nothing said',
    {
      'heat-only-when-safe': [
        ...['danger.none look.well heat.quiet', 'heat-forgotten heat quiet'],
        'heat-without again cooled',
      ],
    },
    { ...heated(READY, {}, 'again'), again: step('set-knob', {}, { heat: true }) },
  ],
  [
    'after heat both said',
    { 'heat-only-when-safe': ['danger.none look.well heat.quiet', 'heat-forgotten heat quiet'] },
    { ...heated(READY, {}, { to: 'next', sets: ['cooled'], clears: ['cooled'] }), next },
  ],
  [
    'a flag that the account lacks',
    {
      'heat-only-when-safe': ['danger.none look.odd', 'flag-without-fact look odd trouble-seen'],
    },
    { look: asks({ odd: { to: 'next', flag: 'trouble-seen' } }), next },
  ],
  [
    'a flag in the account',
    {},
    { look: asks({ odd: { to: 'next', flag: 'trouble-seen', sets: ['trouble-seen'] } }), next },
  ],
  ['a flag that is no fact', {}, { look: asks({ odd: { to: 'next', flag: 'hum' } }), next }],
  ['a flag at an end', {}, { look: asks({ odd: { to: 'done', flag: 'trouble-seen' } }) }],
  ...(
    [
      ['inside-nothing', 'inside-something'],
      ['door-not-forced', 'door-forced'],
    ] as const
  ).flatMap(([good, bad]): Row[] => {
    const page = (unsure: Way, well: readonly Fact[] = [good]): Pages => ({
      look: { answers: { unsure, well: { to: 'next', sets: well } } },
      next,
    });
    const left = (answer: string): Broken => ({
      'heat-only-when-safe': [`danger.none look.${answer}`, `doubt-left look ${answer} ${good}`],
    });
    return [
      [`${good} left in doubt`, left('unsure'), page('next')],
      [`${good} and its contrary`, left('well'), page({ to: 'next', sets: [bad] }, [good, bad])],
      [`${bad} said`, {}, page({ to: 'next', sets: [bad] })],
      [`${good} in doubt at an end`, {}, page('done')],
      [`only ${bad} asked about`, {}, page('next', [bad])],
    ];
  }),
  ...(
    [
      ['an error copied that nobody told of', 'well', {}, {}],
      ['an error copied that one way tells of', 'other', { sets: ['error-seen'] }, {}],
    ] as const
  ).map(([name, shown, well, other]): Row => [
    name,
    { 'heat-only-when-safe': [`danger.none look.${shown}`, 'error-not-told write'] },
    {
      look: asks({ well: { to: 'write', ...well }, other: { to: 'write', ...other } }),
      write: step('read-display', {}, { takesError: true }),
    },
  ]),
  [
    'an error copied that was told of',
    {},
    {
      look: asks({ well: { to: 'write', sets: ['error-seen'] } }),
      write: step('read-display', {}, { takesError: true }),
    },
  ],
  [
    'a question about the display',
    {},
    { look: asks({ well: 'next' }), next: { ...next, takesError: true } },
  ],
];

/** So many breaker steps in a row, behind a look at the panel. */
const breakers = (count: number, well: Omit<Exclude<Way, string>, 'to'>): Pages => ({
  look: asks({ well: { to: 'b1', ...well } }),
  ...Object.fromEntries(
    Array.from({ length: count }, (_, i) => [
      `b${i + 1}`,
      step('breaker', { on: i + 1 < count ? `b${i + 2}` : 'done' }),
    ]),
  ),
});
const ready = { sets: ['panel-ready'] } as const;

const breaker: readonly Row[] = [
  ['the breaker off and on', {}, breakers(2, ready)],
  [
    'the breaker once more',
    { 'breaker-once-and-ready': ['danger.none look.well b1.on b2.on', 'breaker-again b3'] },
    breakers(3, ready),
  ],
  [
    'the breaker again and again',
    {
      'breaker-once-and-ready': [
        ...['danger.none look.well b1.on b2.on', 'breaker-again b3'],
        ...['breaker-again b4', 'breaker-again b5'],
      ],
    },
    breakers(5, ready),
  ],
  [
    'the breaker once more, and then nothing',
    {
      'breaker-once-and-ready': ['danger.none look.well b1.on b2.on', 'breaker-again b3'],
      'journeys-end': ['danger.none look.well b1.on b2.on b3.on', 'leads-nowhere b3 on nowhere'],
    },
    { ...breakers(3, ready), b3: step('breaker', { on: 'nowhere' }) },
  ],
  [
    'the breaker of a panel that nobody looked at',
    { 'breaker-once-and-ready': ['danger.none look.well', 'panel-not-ready b1'] },
    breakers(1, {}),
  ],
  [
    'the breaker of a panel that one way does not look at',
    { 'breaker-once-and-ready': ['danger.none look.other', 'panel-not-ready b1'] },
    { ...breakers(1, {}), look: asks({ well: { to: 'b1', ...ready }, other: 'b1' }) },
  ],
  ...(
    [
      ['trips', { sets: ['breaker-tripped'] }],
      ['has an unfit panel', { clears: ['panel-ready'] }],
    ] as const
  ).flatMap(([what, tells]): Row[] => {
    const ends = (to: string): Pages => ({ look: asks({ bad: { to, ...tells } }) });
    const left: Broken = {
      'breaker-once-and-ready': ['danger.none look.bad', 'breaker-not-left look bad'],
    };
    const off = { ...ends('stop-off'), 'stop-off': { ...soon, breakerStaysOff: true } };
    const stays = 'sets' in tells ? left : {};
    return [
      [`a breaker that ${what} is left off`, {}, off],
      [`a breaker that ${what}, and no word of it`, stays, { ...ends('stop'), stop: soon }],
      [`a breaker that ${what}, and the guide goes on`, left, { ...ends('next'), next }],
      [`a breaker that ${what}, and all is well`, left, ends('done')],
      [
        `a breaker that ${what}, and nothing`,
        { ...left, 'journeys-end': ['danger.none look.bad', 'leads-nowhere look bad nowhere'] },
        ends('nowhere'),
      ],
    ];
  }),
];

const chain = (length: number): Pages => ({
  danger: first({ none: 'p1' }),
  look: gone,
  ...Object.fromEntries(
    Array.from({ length }, (_, i) => [
      `p${i + 1}`,
      // All but the last have a shorter way to an end, too, and it stands first.
      i + 1 < length ? asks({ on: `p${i + 2}` }) : { answers: { on: 'end', unsure: 'done' } },
    ]),
  ),
  end: soon,
});

const others: readonly Row[] = [
  [
    'the door touched while hot',
    { 'door-only-when-cool': ['danger.none look.well', 'door-while-hot open'] },
    { look: asks({ well: 'open' }), open: step('door-by-hand') },
  ],
  [
    'the door touched while hot on one way',
    { 'door-only-when-cool': ['danger.none look.other', 'door-while-hot open'] },
    {
      look: asks({ well: { to: 'open', sets: ['cooled'] }, other: 'open' }),
      open: step('door-by-hand'),
    },
  ],
  [
    'the door touched when cool',
    {},
    { look: asks({ well: { to: 'open', sets: ['cooled'] } }), open: step('door-by-hand') },
  ],
  [
    'an action of no list',
    { 'actions-listed': ['danger.none', 'action-unlisted look pull'] },
    { look: step('pull') },
  ],
  [
    'a step without an action',
    { 'actions-listed': ['danger.none', 'action-unlisted look '] },
    { look: { ...asks(), kind: 'step' } },
  ],
  [
    'a question without "I am not sure"',
    { 'unsure-everywhere': ['danger.none', 'unsure-missing look'] },
    { look: { answers: { well: 'done' } } },
  ],
  [
    'a stop that calls nobody',
    { 'stops-call-and-warn': ['danger.none look.bad', 'nobody-to-call stop'] },
    { look: asks({ bad: 'stop' }), stop: { ...soon, call: [] } },
  ],
  [
    'an emergency that calls another first',
    { 'stops-call-and-warn': ['danger.none look.bad', 'emergency-not-first stop'] },
    {
      look: asks({ bad: 'stop' }),
      stop: { kind: 'stop', urgency: 'emergency', call: ['poison', 'emergency'] },
    },
  ],
  [
    'an end that goes on',
    { 'journeys-end': ['danger.none look.unsure', 'end-goes-on done'] },
    { done: { kind: 'finish', answers: { on: 'end' } }, end: soon },
  ],
  [
    'a page without an answer',
    {
      'journeys-end': ['danger.none', 'dead-end look'],
      'unsure-everywhere': ['danger.none', 'unsure-missing look'],
    },
    { look: {}, done: gone },
  ],
  [
    'an answer that leads nowhere',
    { 'journeys-end': ['danger.none look.lost', 'leads-nowhere look lost nowhere'] },
    { look: asks({ lost: 'nowhere' }) },
  ],
  [
    'a page that leads to itself',
    { 'journeys-end': ['danger.none look.again', 'loop look look'] },
    { look: asks({ again: 'look' }) },
  ],
  [
    'a loop of three pages',
    { 'journeys-end': ['danger.none look.on b.on c.back', 'loop look look b c'] },
    { look: asks({ on: 'b' }), b: asks({ on: 'c' }), c: asks({ back: 'look' }) },
  ],
  ['a page out of reach', { 'journeys-end': ['', 'unreachable far'] }, { far: soon }],
  ['a journey of 25 answers', {}, chain(24)],
  [
    'a journey of 26 answers',
    {
      'journeys-end': [
        ['danger.none', ...Array.from({ length: 25 }, (_, i) => `p${i + 1}.on`)].join(' '),
        'too-long end 26 25',
      ],
    },
    chain(25),
  ],
];

/** The page `look` once more. */
const copy = (answers: Ways = {}): Draft => ({ ...asks(answers), sentences: 'look' });
const most = (count: number): More => ({ rules: [{ kind: 'most', page: 'look', most: count }] });
const three: Pages = {
  ...{ look: asks({ on: 'two' }), two: copy({ on: 'three' }) },
  ...{ three: copy({ on: 'four' }), four: copy() },
};
const both: Pages = { look: { answers: { unsure: 'next', well: 'next' } }, next };
const ends = (to: string): readonly [Pages, More] => [
  { look: asks({ well: to }), ...(to === 'next' ? { next } : {}) },
  { rules: [{ kind: 'ends-at', answer: 'look.well', ends: ['stop', 'done'] }] },
];

const rules: readonly Row[] = [
  [
    'a page once too often',
    { 'rules-kept': ['danger.none look.on', 'page-again two 1'] },
    three,
    most(1),
  ],
  [
    'a page a third time',
    { 'rules-kept': ['danger.none look.on two.on', 'page-again three 2'] },
    three,
    most(2),
  ],
  ['a page as often as it may come', {}, three, most(4)],
  [
    'a page without the answer it needs',
    { 'rules-kept': ['danger.none look.unsure', 'page-without next look.well'] },
    both,
    { rules: [{ kind: 'needs', page: 'next', answer: 'look.well' }] },
  ],
  [
    'a page with the answer it needs',
    {},
    { look: asks({ well: 'next' }), next },
    { rules: [{ kind: 'needs', page: 'next', answer: 'look.well' }] },
  ],
  [
    'a page despite an answer',
    { 'rules-kept': ['danger.none look.well', 'page-despite next look.well'] },
    both,
    { rules: [{ kind: 'never-after', page: 'next', answer: 'look.well' }] },
  ],
  [
    'a page without the answer that lifts it',
    {
      'rules-kept': ['danger.none look.well between.unsure', 'page-despite next look.well'],
    },
    {
      look: asks({ well: 'between' }),
      between: { answers: { unsure: 'next', fixed: 'next' } },
      next,
    },
    {
      rules: [{ kind: 'never-after', page: 'next', answer: 'look.well', unless: 'between.fixed' }],
    },
  ],
  [
    'a page after the answer that lifts it',
    {},
    { look: asks({ well: 'between' }), between: asks({ fixed: 'next' }), next },
    {
      rules: [{ kind: 'never-after', page: 'next', answer: 'look.well', unless: 'between.fixed' }],
    },
  ],
  ['an answer that ends where it should', {}, ...ends('done')],
  [
    'an answer that ends elsewhere',
    { 'rules-kept': ['danger.none look.well', 'ends-elsewhere look well stop done'] },
    ...ends('next'),
  ],
  [
    'an answer that ends nowhere',
    { 'journeys-end': ['danger.none look.well', 'leads-nowhere look well nowhere'] },
    ...ends('nowhere'),
  ],
];

/** Loops in a loop: what is told in the inner one is known behind `p` after three rounds. */
const loops = (told: Omit<Exclude<Way, string>, 'to'>, inner: Draft, behind: Draft): Pages => ({
  danger: first({ none: { to: 'p', sets: ['cooled', 'panel-ready'] } }),
  look: gone,
  p: { answers: { unsure: 'behind', on: 'q' } },
  q: asks({ on: 'r', back: 'p' }),
  r: { ...asks({ back: { to: 'q', ...told } }), ...inner },
  behind,
});
const round: Broken = { 'journeys-end': ['danger.none p.on q.on r.back', 'loop q q r'] };
const BACK = 'danger.none p.on q.on r.back q.back p.unsure';

const inLoops: readonly Row[] = [
  [
    'trouble told of in a loop',
    { ...round, 'done-only-when-well': [BACK, 'done-despite behind trouble-seen'] },
    loops({ sets: ['trouble-seen'] }, {}, { kind: 'finish', done: true }),
  ],
  [
    'what was true taken back in a loop',
    { ...round, 'door-only-when-cool': [BACK, 'door-while-hot behind'] },
    loops({ clears: ['cooled'] }, {}, step('door-by-hand')),
  ],
  [
    'the breaker worked in a loop',
    {
      ...round,
      'breaker-once-and-ready': [
        `danger.none p.on${' q.on r.back'.repeat(3)} q.on`,
        'breaker-again r',
        'breaker-again behind',
      ],
    },
    loops({}, { kind: 'step', action: 'breaker' }, step('breaker')),
  ],
];

describe('in a guide with nothing else wrong in it, the proof', () => {
  const rows = [...dangerFirst, ...heat, ...breaker, ...others, ...rules, ...inLoops];
  it.each(rows.map((row) => [row[0], row] as const))('tells of %s', (_, row) => {
    const [, expected, pages, more] = row;
    expect(broken(guideOf(pages, more))).toEqual(expected);
  });

  it('tells the same in whatever order the pages stand', () => {
    for (const [name, expected, own, more] of rows) {
      const guide = guideOf(own, more);
      const nodes = new Map([...guide.nodes].toReversed());
      const sorted = (all: Broken) =>
        Object.fromEntries(Object.entries(all).map(([id, lines]) => [id, lines.toSorted()]));
      expect(sorted(broken({ ...guide, nodes })), name).toEqual(sorted(expected));
    }
  });
});

describe('the proof counts', () => {
  const journeys = (pages: Pages) => prove(guideOf(pages)).journeys;

  it('all journeys, and those that came to an end', () => {
    expect(journeys({})).toEqual({ all: 7n, complete: 5n, shortest: 1, longest: 2 });
    expect(journeys({ look: asks({ on: 'next' }), next: asks() })).toEqual({
      ...{ all: 9n, complete: 6n, shortest: 1, longest: 3 },
    });
    // An answer that leads nowhere ends no journey, and begins none.
    expect(journeys({ look: asks({ well: 'nowhere' }) })).toEqual({
      ...{ all: 6n, complete: 4n, shortest: 1, longest: 2 },
    });
    const none = { danger: gone, look: gone, 'stop-fire': gone, 'stop-unsure': gone, done: gone };
    expect(journeys(none)).toEqual({ all: 0n, complete: 0n, shortest: null, longest: null });
    expect(journeys({ look: asks({ on: 'look' }) })).toEqual({
      ...{ all: null, complete: null, shortest: null, longest: null },
    });
  });

  it('those that a property speaks of', () => {
    const guide = guideOf(
      {
        danger: first({ none: { to: 'look', sets: [...READY, ...ready.sets] } }),
        look: asks({ heat: 'heat', open: 'open', off: 'off' }),
        heat: step('set-knob', {}, { heat: true }),
        ...{ open: step('door-by-hand'), off: step('breaker') },
        done: { kind: 'finish', done: true },
      },
      { rules: [{ kind: 'most', page: 'heat', most: 1 }] },
    );
    const proof = prove(guide, { sentences: {}, grade: () => 0 });
    const all = 4n + 2n + 3n * 3n;
    expect(proof.journeys.all).toBe(all);
    expect(
      proof.verdicts.map(({ id, journeysCovered, journeysConcerned }) => [
        ...[id, journeysCovered, journeysConcerned],
      ]),
    ).toEqual([
      ['danger-first', all, all],
      ['heat-only-when-safe', all, 3n],
      ['breaker-once-and-ready', all, 3n],
      ['actions-listed', all, 9n],
      ['journeys-end', all, all],
      ['stops-call-and-warn', all, 6n],
      ['door-only-when-cool', all, 3n],
      ['sentences-plain', all, all],
      ['unsure-everywhere', all, all],
      ['unsure-is-no-alarm', all, all],
      ['done-only-when-well', all, 4n],
      ['rules-kept', all, 3n],
    ]);
    const ruled = (answer: string) =>
      prove({ ...guide, rules: [{ kind: 'ends-at', answer, ends: ['done'] }] }).verdicts.at(-1);
    expect(ruled('heat.unsure')?.journeysConcerned).toBe(3n);
    expect(ruled('hea.unsure')?.journeysConcerned).toBe(0n);
    expect(prove(guideOf({ look: asks({ on: 'look' }) })).verdicts[0]).toMatchObject({
      ...{ journeysCovered: null, journeysConcerned: null },
    });
  });
});

it('a node that is not there is on no journey', () => {
  expect(searchesOf(graphOf(guideOf({}))).plain(-1)).toBeUndefined();
});
