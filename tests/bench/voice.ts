/**
 * How well a code survives a phone line, as far as a machine can say: Debian's espeak-ng speaks it
 * group by group, sox cuts it to 300 to 3,400 Hz, white noise is added, then G.711 (µ-law, 8 kHz);
 * pocketsphinx hears it with a grammar of as many signs. Its model is English and of wide-band
 * speech, so that it hears a telephone badly ("no line" shows what it can do at best); Spanish and
 * French are heard through their nearest English phones. VOICE_CODES says how many codes are spoken,
 * each once: every reading, voice and noise has its own share of them. Runs of another VOICE_SEED add up.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readCode } from '../../src/note/read.ts';
import { digitGroups, homeWords, letterWords } from '../../src/note/spelling.ts';
import { digitNames } from '../../src/note/typed.ts';
import { alphabet } from '../../src/note/symbols.ts';
import { writeCode } from '../../src/note/write.ts';
import { plainNote, working } from '../unit/note/codebooks.ts';
import { makeRandom, type Random } from '../unit/note/random.ts';
import type { Row } from './row.ts';

const CODES = Number(process.env['VOICE_CODES'] ?? 48);
/** What is heard is heard at this rate. */
const HEARD = 16_000;
/** Signal to noise, dB; the first is heard without a line. */
const NOISES = [undefined, 20, 10, 5];
const RATE = 8000;
const MODEL = '/usr/share/pocketsphinx/model/en-us/en-us';
/** Times a group is said until it is heard right, as a caller does who hears it read back. */
const TRIES = 3;
/** What `digits.ts` and `repair.ts` promise: never another code of fewer wrong characters. */
const PROMISED = 5;

// Phones of the CMU dictionary, from memory: of the letters' English names, and of Spanish and French
// ones the nearest. Of words of the ITU's the dictionary of the model itself is asked.
const EN = `A EY|B B IY|C S IY|D D IY|E IY|F EH F|G JH IY|H EY CH|J JH EY|K K EY|M EH M|N EH N|P P IY|Q K Y UW|R AA R|S EH S|T T IY|V V IY|W D AH B AH L Y UW|X EH K S|Y W AY|Z Z IY|0 Z IH R OW|1 W AH N|2 T UW|3 TH R IY|4 F AO R|5 F AY V|6 S IH K S|7 S EH V AH N|8 EY T|9 N AY N`;
const ES = `A AA|B B EY|C S EY|D D EY|E EY|F EH F EY|G HH EY|H AA CH EY|J HH OW T AA|K K AA|M EH M EY|N EH N EY|P P EY|Q K UW|R EH R EY|S EH S EY|T T EY|V UW B EY|W UW B EY D OW B L EY|X EH K IY S|Y IY G R IY EY G AA|Z S EY T AA|0 S EH R OW|1 UW N OW|2 D OW S|3 T R EH S|4 K W AA T R OW|5 S IY N K OW|6 S EY S|7 S Y EH T EY|8 OW CH OW|9 N W EY V EY`;
const FR = `A AA|B B EY|C S EY|D D EY|E AH|F EH F|G ZH EY|H AA SH|J ZH IY|K K AA|M EH M|N EH N|P P EY|Q K Y UW|R EH R|S EH S|T T EY|V V EY|W D UW B L AH V EY|X IY K S|Y IY G R EH K|Z Z EH D|0 Z EY R OW|1 AH N|2 D UH|3 T R W AA|4 K AA T R AH|5 S AE N K|6 S IY S|7 S EH T|8 W IY T|9 N UH F`;
const NAMES: Readonly<Record<string, string>> = { en: EN, es: ES, fr: FR };
const VOICES: Readonly<Record<string, string>> = { en: 'en-us', es: 'es-419', fr: 'fr' };
/** ITU words that the model's dictionary spells another way. */
const SPELT: Readonly<Record<string, string>> = {
  alfa: 'alpha',
  juliett: 'juliet',
  'x-ray': 'x-ray',
};

type Kind = 'letters' | 'words' | 'digits' | 'read back';

/** A sign as it is said, and the phones that are listened for. */
interface Said {
  readonly say: string;
  readonly phones: string;
}

function saidOf(kind: Kind, language: string): ReadonlyMap<string, Said> {
  const names = new Map(
    (NAMES[language] ?? EN).split('|').map((one) => [one.charAt(0), one.slice(2)] as const),
  );
  const dictionary = new Map(
    readFileSync('/usr/share/pocketsphinx/model/en-us/cmudict-en-us.dict', 'utf8')
      .split('\n')
      .map((line) => [line.split(' ', 1)[0] ?? '', line.slice(line.indexOf(' ') + 1)] as const),
  );
  const digits = homeWords[language]?.digits.split(' ') ?? digitNames;
  return new Map(
    [...alphabet].map((sign) => {
      const digit = digits[Number(sign)];
      const spell = kind === 'words' || kind === 'read back';
      const word = spell && digit === undefined ? (letterWords[sign] ?? '') : '';
      const phones = word
        ? dictionary.get(SPELT[word.toLowerCase()] ?? word.toLowerCase())
        : names.get(sign);
      if (!phones) throw new Error(`no phones for ${sign}`);
      return [sign, { say: word || (digit ?? sign), phones }] as const;
    }),
  );
}

/** 95 %, Wilson 1927. */
function wilson(hits: number, of: number): readonly [number, number] {
  const [z, p] = [1.96, hits / of];
  const middle = p + (z * z) / (2 * of);
  const spread = z * Math.sqrt((p * (1 - p)) / of + (z * z) / (4 * of * of));
  return [(middle - spread) / (1 + (z * z) / of), (middle + spread) / (1 + (z * z) / of)];
}

/** White noise of a power below the speech's; Box and Muller 1958. */
function noisy(speech: Int16Array, decibels: number, random: Random): Int16Array {
  const power = speech.reduce((sum, value) => sum + value * value, 0) / speech.length;
  const loud = Math.sqrt(power / 10 ** (decibels / 10));
  const part = () => (1 + random.below(1_000_000)) / 1_000_001;
  return speech.map((value) => {
    const noise = Math.sqrt(-2 * Math.log(part())) * Math.cos(2 * Math.PI * part());
    return Math.max(-32_768, Math.min(32_767, value + loud * noise));
  });
}

const sox = (...args: readonly string[]) => execFileSync('sox', ['-V1', ...args]);
const raw = (rate: number) => [
  '-t',
  'raw',
  '-r',
  String(rate),
  '-e',
  'signed',
  '-b',
  '16',
  '-c',
  '1',
];

const spoken = new Map<string, Int16Array>();
/** What a voice says of a text, 16 bits: over a line without noise at 8 kHz, or as it is. */
function spokenBy(folder: string, voice: string, text: string, line: boolean): Int16Array {
  const key = `${voice} ${String(line)} ${text}`;
  const known = spoken.get(key);
  if (known) return known;
  const [wav, out] = [join(folder, 'said.wav'), join(folder, 'said.raw')];
  execFileSync('espeak-ng', ['-v', voice, '-s', '110', '-g', '10', '-w', wav, text]);
  if (line) sox(wav, ...raw(RATE), out, 'norm', '-3', 'sinc', '300-3400');
  else sox(wav, ...raw(HEARD), out, 'norm', '-3');
  const made = samples(out);
  spoken.set(key, made);
  return made;
}

function samples(file: string): Int16Array {
  const bytes = readFileSync(file);
  return new Int16Array(bytes.buffer, bytes.byteOffset, bytes.length / 2).slice();
}

/** Groups of signs as they are spoken and heard, all in one run of the recognizer. */
function heard(
  folder: string,
  language: string,
  said: ReadonlyMap<string, Said>,
  groups: readonly string[],
  noise: number | undefined,
  random: Random,
): readonly string[] {
  const file = (name: string) => join(folder, name);
  const onlyDigits = groups.every((group) => /^\d+$/.test(group));
  const signs = [...said].slice(0, onlyDigits ? 10 : said.size);
  writeFileSync(file('dict'), signs.map(([sign, { phones }]) => `s${sign} ${phones}\n`).join(''));
  const speeches = groups.map((group) => {
    const text = `${[...group].map((sign) => said.get(sign)?.say).join(', ')}.`;
    const speech = spokenBy(folder, VOICES[language] ?? 'en', text, noise !== undefined);
    return noise === undefined ? speech : noisy(speech, noise, random);
  });
  const whole = Int16Array.from(speeches.flatMap((one) => [...one]));
  writeFileSync(file('all.raw'), whole);
  if (noise !== undefined) {
    sox(...raw(RATE), file('all.raw'), '-e', 'mu-law', '-b', '8', file('line.wav'));
    sox(file('line.wav'), ...raw(HEARD), file('all.raw'));
  }
  const line = samples(file('all.raw'));
  const scale = noise === undefined ? 1 : HEARD / RATE;
  let from = 0;
  const heardAs = groups.map(() => '');
  for (const [n, speech] of speeches.entries()) {
    const until = from + speech.length * scale;
    writeFileSync(file(`${String(n)}.raw`), line.subarray(from, until));
    from = until;
  }
  // Of each size of group its own grammar: the last group of digits is short.
  for (const size of new Set(groups.map((group) => group.length))) {
    const own = [...groups.keys()].filter((n) => groups[n]?.length === size);
    writeFileSync(file('list'), own.map((n) => `${String(n)}\n`).join(''));
    const rule = signs.map(([sign]) => `s${sign}`).join(' | ');
    const code = Array(size).fill('<sign>').join(' ');
    writeFileSync(
      file('grammar'),
      `#JSGF V1.0;\ngrammar code;\n<sign> = ${rule};\npublic <code> = ${code};\n`,
    );
    const options = {
      ...{ hmm: MODEL, dict: file('dict'), jsgf: file('grammar'), ctl: file('list') },
      ...{ cepdir: folder, cepext: '.raw', adcin: 'yes', hyp: file('hyp'), logfn: '/dev/null' },
      remove_noise: 'no',
    };
    execFileSync(
      'pocketsphinx_batch',
      Object.entries(options).flatMap(([name, value]) => [`-${name}`, value]),
      { stdio: 'ignore' },
    );
    const lines = readFileSync(file('hyp'), 'utf8').split('\n');
    for (const [i, n] of own.entries())
      heardAs[n] = (lines[i] ?? '').replace(/\(.*$/, '').replace(/[s ]/g, '');
  }
  return heardAs;
}

type Outcome = 'exact' | 'repaired' | 'refused' | 'wrong';

/** Places that differ; what was not heard counts. */
const wrongIn = (heard: string, group: string): number =>
  [...group].filter((sign, at) => heard.charAt(at) !== sign).length;

/** Codes spoken and heard: exact, repaired, refused, wrong, by reading, voice and noise. */
export function benchVoice(): Promise<Row[]> {
  const random = makeRandom(Number(process.env['VOICE_SEED'] ?? 60));
  const cells = (['letters', 'words', 'digits', 'read back'] as const).flatMap((kind) =>
    Object.keys(VOICES).flatMap((language) =>
      NOISES.map((noise) => [kind, language, noise] as const),
    ),
  );
  const share = Math.ceil(CODES / cells.length);
  const newCode = () => {
    const code = writeCode(plainNote(BigInt(random.below(12_000_000)), random.below(32)), working);
    if (!code.ok) throw new Error(code.error.code);
    return code.value;
  };
  const folder = mkdtempSync(join(tmpdir(), 'voice-'));
  let broken = 0;
  const cell = ([kind, language, noise]: (typeof cells)[number]): Row => {
    const codes = Array.from({ length: share }, newCode);
    const said = saidOf(kind, language);
    const groups = codes.flatMap((code, i) =>
      (kind === 'digits' ? digitGroups(code) : code.split('-')).map((text) => ({
        i,
        text,
        got: '',
      })),
    );
    // Read back, a group heard wrong is said again.
    let left = groups;
    for (let tries = kind === 'read back' ? TRIES : 1; tries > 0 && left.length > 0; tries -= 1) {
      const got = heard(
        folder,
        language,
        said,
        left.map(({ text }) => text),
        noise,
        random,
      );
      for (const [n, group] of left.entries()) group.got = got[n] ?? '';
      left = left.filter(({ got: heardAs, text }) => heardAs !== text);
    }
    const count: Record<Outcome, number> = { exact: 0, repaired: 0, refused: 0, wrong: 0 };
    let bad = 0;
    for (const [i, code] of codes.entries()) {
      const own = groups.filter((group) => group.i === i);
      const reading = readCode(
        own.map(({ got, text }) => got.padEnd(text.length, '?')).join(' '),
        working,
      );
      const outcome: Outcome =
        reading.kind === 'refused' || reading.code === code ? reading.kind : 'wrong';
      count[outcome] += 1;
      const off = own.reduce((sum, { got, text }) => sum + wrongIn(got, text), 0);
      bad += off;
      if (outcome === 'wrong' && off < PROMISED) broken += 1;
    }
    const signs = groups.reduce((sum, { text }) => sum + text.length, 0);
    const right = count.exact + count.repaired;
    const [low, high] = wilson(right, share).map((share) => (100 * share).toFixed(0));
    const told = Object.entries(count).map(([name, n]) => `${name} ${String(n)}`);
    const name = `voice: ${kind}, ${language}, ${noise === undefined ? 'no line' : `${String(noise)} dB`}`;
    const heardSigns = `${((100 * (signs - bad)) / signs).toFixed(0)} % of signs`;
    const note = `${low ?? ''} to ${high ?? ''} (95 %); ${told.join(', ')}; ${heardSigns}`;
    console.error(name, note);
    return { name, value: (100 * right) / share, unit: '% of codes', note };
  };
  try {
    const rows = cells.map(cell);
    const note = `fewer than ${String(PROMISED)} wrong characters`;
    const taken = {
      name: 'voice: taken for another code',
      value: broken,
      unit: '',
      ceiling: 0,
      note,
    };
    return Promise.resolve([...rows, taken]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
