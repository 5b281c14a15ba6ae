// The readers of text that comes from outside: what each must keep to, whatever the text.
import { isDeepStrictEqual } from 'node:util';
import { content } from '../../../src/content/load.ts';
import { OTHER } from '../../../src/diagnosis/visits-schema.ts';
import { onceEach, readVisits, unknownNames } from '../../../src/diagnosis/read-visits.ts';
import { formatFragment, parseFragment } from '../../../src/address/fragment.ts';
import { loadGuide } from '../../../src/guide/load.ts';
import { prove } from '../../../src/proof/prove.ts';
import { readCode } from '../../../src/note/read.ts';
import { writeCode } from '../../../src/note/write.ts';
import { savedAddress } from '../../../src/app/question/saved.ts';
import { smallSource, takingSource } from '../guide/support/small.ts';
import type { Target } from './engine.ts';
import { SPELLED, codesOf, hold, codebooks } from './good.ts';
import { pasted } from './pasted.ts';

/** A note code as typed or said. */
const code: Target = {
  name: 'code',
  longest: 1000,
  seeds: [...codesOf('door-locked'), SPELLED],
  bits: [...'0123456789ABCDEFGHJKMNPQRSTVWXYZoil?- ', 'papa ', 'x-ray ', 'x ray', 'Zero', 'K110'],
  read(input) {
    const reading = readCode(input, codebooks);
    if (reading.kind === 'refused') return reading.problem.code;
    // What is read is the one note with this code, and the code its one spelling.
    const written = writeCode(reading.note, codebooks);
    hold(written.ok && written.value === reading.code, 'the note read has the code read');
    const again = readCode(reading.code, codebooks);
    hold(again.kind === 'exact', 'the code read is exact');
    hold(isDeepStrictEqual(again.note, reading.note), 'and means the same');
    const changes = reading.kind === 'repaired' ? reading.places.map(({ how }) => how) : [];
    hold((reading.kind === 'repaired') === changes.length > 0, 'a repair shows its places');
    return [reading.kind, ...changes].join(' ');
  },
};

/** Control characters and marks of direction, but for what no fragment lets through. */
const HIDDEN = /[\p{Cc}\p{Bidi_Control}\u2028\u2029\ufeff]/u;

/** What stands after `#` in an address. */
const fragment: Target = {
  name: 'fragment',
  longest: 20_000,
  seeds: [
    'j=danger.none~doing.ended~display.lock&e=F9%20-%20E0&d=fuel.gas~age.new&on=2026-11-25',
    '#g=error-shows&j=start.one~door-locked/wait.unsure&w=wait.t4k2c0&m=AB-12&r=It+hums',
    // As much as a person can write, in letters of another script and beyond them.
    `j=danger.none&e=${'م'.repeat(120)}&m=${'م'.repeat(60)}&r=${'م'.repeat(500)}`,
    `r=${'💥'.repeat(500)}&e=${'💥'.repeat(120)}`,
    'c=4GK5-84J7-KCVW-F7F3&r=%D9%85%D8%B1%D8%AD%D8%A8%D8%A7%20%F0%9F%92%A5',
  ],
  bits: [
    'j=',
    '&e=',
    '&d=',
    '&on=2026-02-30',
    '&w=wait.zz',
    '~a.b',
    '%',
    '%E0%80',
    '%0A',
    '+',
    '=&',
  ],
  read(input) {
    const { fragment: read, problems } = parseFragment(input);
    const texts = [read.error, read.code, read.model, read.remark, read.guide, read.made];
    hold(!texts.some((text) => text !== undefined && HIDDEN.test(text)), 'nothing hidden is left');
    hold(!texts.includes(''), 'an absent part is absent');
    hold(read.journey.length <= 64, 'a journey is bounded');
    // What was read is written and read again without loss.
    const again = parseFragment(formatFragment(read));
    hold(isDeepStrictEqual(again.fragment, read), 'written and read again, it is the same');
    hold(again.problems.length === 0, `and without a word: ${JSON.stringify(again.problems)}`);
    const parts = Object.entries(read)
      .filter(([, value]) => Object.keys(value as object).length > 0)
      .map(([key]) => key);
    return [...problems.map((one) => Object.values(one).slice(0, 2).join(':')), ...parts]
      .filter((word, i, all) => all.indexOf(word) === i)
      .map((word) => word.replace(/:\d+$/, ''))
      .join(' ');
  },
};

const HERE = 'https://range.example/help/';

/** The journey kept on the device, as the first page finds it. */
const saved: Target = {
  name: 'saved journey',
  longest: 25_000,
  seeds: [
    '/help/door-locked/wait/#j=danger.none~doing.ended',
    '/help/note/#g=door-locked&j=danger.none&r=text',
    'https://range.example/help/door-locked/danger/#j=danger.none',
  ],
  bits: [
    '//',
    'https://elsewhere.example/',
    'javascript:',
    '#j=',
    'j=a.b',
    '\\',
    '@',
    ':',
    '?q=1',
    '..',
  ],
  read(input) {
    const url = savedAddress(input, HERE);
    if (!url) return 'set aside';
    const found = url.href;
    hold(url.origin === 'https://range.example', 'it stays on the site');
    hold(
      /^https:\/\/range\.example\/[\w./-]*(?:\?|#)/.test(found),
      'it is an address as we write them',
    );
    hold(parseFragment(url.hash).fragment.journey.length > 0, 'it holds a journey');
    hold(savedAddress(found, HERE)?.href === found, 'kept again, it is the same');
    return `followed, ${String(Math.min(url.pathname.split('/').length, 8))} deep`;
  },
};

const declared = { faults: { sensor: {}, latch: {} }, parts: { sensor: {} } };

/** A file of visits as a technician's device brings it. */
const visits: Target = {
  name: 'visits',
  longest: 12_000,
  seeds: [
    JSON.stringify({
      format: 'hobnote-visits',
      version: 1,
      guide: 'door-locked',
      visits: [
        { answers: { doing: 'ended', 'detail.fuel': 'gas' }, fault: 'sensor', parts: ['sensor'] },
        { id: '0123456789abcdef'.repeat(2), answers: { 'a/b': 'c' }, fault: OTHER, parts: [] },
      ],
    }),
  ],
  bits: [
    '{',
    '}',
    '[',
    ']',
    ',',
    ':',
    '"',
    'null',
    '1',
    '"visits":',
    '"a":"b"',
    '"__proto__":',
    '\\u0000',
  ],
  read(input) {
    const read = readVisits(input);
    if (!read.ok) {
      hold(read.error.length > 0, 'a refusal says why');
      const [first] = read.error;
      return first?.code === 'wrong-shape'
        ? `${first.path.replace(/\d+/g, 'n')} ${first.issue}`
        : 'not-json';
    }
    const { value } = read;
    const again = readVisits(JSON.stringify(value));
    hold(
      again.ok && isDeepStrictEqual(again.value, value),
      'written and read again, it is the same',
    );
    const names = unknownNames(value, declared);
    const once = onceEach(value.visits);
    hold(isDeepStrictEqual(onceEach(once), once), 'once is once');
    for (const { fault, parts } of value.visits)
      hold(/^[a-z0-9-]+$/.test([fault, ...parts].join('-')), 'names are names');
    return `${String(value.visits.length)} visits, ${String(names.length)} unknown`;
  },
};

const blocks = content().blocks();
hold(blocks.ok, 'the blocks load');

/** A guide as its author writes it. */
const guide: Target = {
  name: 'guide',
  longest: 12_000,
  seeds: [smallSource, takingSource],
  bits: [
    ...['nodes:\n', 'answers: ', 'to: ', 'kind: question', 'kind: stop\n', '  ', '- ', '&a ', '*a'],
    ...[
      '{ a: ask }',
      'track: b',
      'only: a',
      'sets: [cooled]',
      '!!js/function ',
      '<<: *a',
      '|',
      '? ',
    ],
    ...[
      'timer: cooling',
      'entries: [ask]',
      'to: other/ask',
      'rules: []',
      'blocks: { danger: { none: ask } }',
      'exit/none',
      'unsure',
      'look',
      'done',
    ],
  ],
  read(input) {
    const loaded = loadGuide(input, 'fuzz.yaml', blocks.value);
    if (loaded.ok) {
      const { holds } = prove(loaded.value);
      return `loads, ${String(loaded.value.nodes.size)} nodes, ${holds ? 'holds' : 'does not hold'}`;
    }
    hold(loaded.error.length > 0, 'a refusal says why');
    const lines = input.split('\n').length + 1;
    for (const { place, file } of loaded.error)
      hold(
        place.line >= 1 && place.line <= lines && file === 'fuzz.yaml',
        'a problem has its place',
      );
    return [...new Set(loaded.error.map((problem) => problem.code))].toSorted().join(' ');
  },
};

/** Each reader, and its share of all inputs: the slow ones get fewer. */
export const targets: readonly (readonly [target: Target, share: number])[] = [
  [code, 0.24],
  [fragment, 0.2],
  [saved, 0.1],
  [visits, 0.04],
  [pasted, 0.01],
  [guide, 0.01],
];
