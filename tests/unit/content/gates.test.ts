// Each slip is made in a copy of the published content; the gates are those the build runs.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openContent } from '../../../src/content/content.ts';
import { languageReport } from '../../../src/content/language-report.ts';
import { checkContent } from '../../../src/content/gates.ts';
import type { Gate } from '../../../src/content/gates.ts';
import { tellProblem } from '../../../src/content/tell.ts';
import { copyOfContent, spoil, toldBy } from './copy.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const published = join(root, 'content');
let copy = copyOfContent();
beforeEach(() => {
  copy = copyOfContent();
});
afterEach(() => {
  copy.done();
});

/** The copy in French besides: files of all names it needs, whatever is translated by now. */
function speakFrench(): void {
  cpSync(join(copy.folder, 'text/en'), join(copy.folder, 'text/fr'), { recursive: true });
  spoil(copy.folder, 'firm.yaml', 'languages: [en]', 'languages: [en, fr]');
}

it('refuses a file that is not UTF-8, by its name', () => {
  const path = join(copy.folder, 'firm.yaml');
  const text = readFileSync(path, 'utf8').replace(/^name: .*$/m, 'name: Café Ranges');
  writeFileSync(path, Buffer.from(text, 'latin1'));
  expect(toldBy('shape', copy.folder).join()).toMatch(/firm\.yaml:1:1: It is not saved as UTF-8/);
});

it('refuses a language given twice', () => {
  spoil(copy.folder, 'firm.yaml', 'languages: [en]', 'languages: [en, en]');
  expect(toldBy('shape', copy.folder).join()).toContain('each language once');
});

it('asks a language that no staff speak for nothing that phone staff say', () => {
  spoil(copy.folder, 'firm.yaml', 'languages: [en]', 'languages: [en, ar]');
  expect(toldBy('languages', copy.folder)).toEqual([]);
});

describe('the published content', () => {
  it('passes every gate', () => {
    expect(checkContent(openContent(published))).toEqual([]);
  });
});

interface Slip {
  readonly name: string;
  readonly gate: Gate['id'];
  /** The copy speaks French, too. */
  readonly french?: true;
  readonly file: string;
  readonly from: string;
  readonly to: string;
  /** Lines between the replaced text and what is told. */
  readonly below?: number;
  /** The file told of, where it is another one; then its line is not asked for. */
  readonly told?: string;
  readonly what: string;
  readonly hint: string;
}

const slips: readonly Slip[] = [
  {
    name: 'a line that calls the firm, and nothing that the desk says there',
    gate: 'sentences',
    file: 'text/en/door-locked.json',
    from: 'can get hot."],\n    "desk": {\n      "call": "{{book}}"\n    }',
    to: 'can get hot."]',
    told: 'text/en/door-locked.json',
    what: '"desk" is missing in stop-hum',
    hint: 'Add "desk"',
  },
  {
    name: 'what the desk says in place of a line that is not there',
    gate: 'sentences',
    file: 'text/en/door-locked.json',
    from: '"Call {{firm}} at {{phone}}. Say that the hum does not stop."',
    to: '"Book a visit."',
    told: 'text/en/door-locked.json',
    what: 'no line of the page tells the reader to call the firm',
    hint: 'its neighbors and comments show the form',
  },
  {
    name: 'a doubled key in JSON, both lines named',
    gate: 'shape',
    file: 'text/en/preview.json',
    from: '    "leans": ',
    to: '    "late-light": "Gas lights late",\n    "leans": ',
    what: 'This key is given twice: here and in line ',
    hint: 'Keep one of the two',
  },
  {
    name: 'a doubled key in YAML, both lines named',
    gate: 'shape',
    file: 'guides/door-locked/graph.yaml',
    from: '      heat: { to: wait }',
    to: '      heat: { to: wait }\n      heat: { to: wait }',
    below: 1,
    what: 'This key is given twice: here and in line ',
    hint: 'Keep one of the two',
  },
  {
    name: 'a unit of one region that another has no words for',
    gate: 'regions',
    file: 'text/en/door-locked.json',
    from: 'Hold your open hand 4 inches',
    to: 'Hold your open hand 7 inches',
    what: '“inches” is not said in CA.',
    hint: 'Add what CA says instead under CA.say in content/regions.yaml',
  },
  {
    name: 'a phrase of a region that no sentence has',
    gate: 'regions',
    file: 'regions.yaml',
    from: '    flashlight: torch',
    to: '    flash light: torch',
    what: 'No English sentence says “flash light” any more.',
    hint: 'Put the phrase as the sentence now has it',
  },
  {
    name: 'an alias',
    gate: 'shape',
    file: 'details.yaml',
    from: "storm: ['yes', 'no']\nrepairs: ['yes', 'no']",
    to: "storm: &both ['yes', 'no']\nrepairs: *both",
    below: 1,
    what: 'This has an alias (*)',
    hint: 'Write the value out',
  },
  {
    name: 'JSON that is none',
    gate: 'shape',
    file: 'sources.json',
    from: '"ul-2034": ',
    to: '"ul-2034" ',
    what: 'This cannot be parsed',
    hint: 'Check indentation, commas',
  },
  {
    name: 'a fault without words',
    gate: 'sentences',
    file: 'text/en/model.json',
    from: '    "not-cool": {',
    to: '    "no-such-fault": {',
    what: 'There is no sentence model:faults.not-cool.name, which ',
    hint: 'Write it here',
    below: -1,
  },
  {
    name: 'a detail without words on the homeowner’s page',
    gate: 'sentences',
    file: 'text/en/note.json',
    from: '"label": "What kind is it?",',
    to: '',
    what: 'There is no sentence note:details.kind.label, which ',
    hint: 'Write it here',
    below: -1,
  },
  {
    name: 'a detail’s answer without words on the technician’s page',
    gate: 'sentences',
    file: 'details.yaml',
    from: 'dual]',
    to: 'dual, wood]',
    told: 'text/en/preview.json',
    what: 'There is no sentence preview:details.fuel.answers.wood, which ',
    hint: 'Write it here',
  },
  {
    name: 'an answer of a guide without its label',
    gate: 'sentences',
    file: 'guides/door-locked/graph.yaml',
    from: '      heat: { to: wait }',
    to: '      heat: { to: wait }\n      hot: { to: wait }',
    told: 'text/en/door-locked.json',
    what: '"hot" is missing in near.answers.',
    hint: 'Add "hot"',
  },
  {
    name: 'a language that lacks a stop',
    gate: 'languages',
    french: true,
    file: 'text/fr/blocks.json',
    from: '"stop-fire": {',
    to: '"stop-feu": {',
    what: 'blocks:stop-fire: is missing, and it keeps readers safe',
    hint: 'Translate the English sentence.',
    told: 'text/fr/blocks.json',
  },
  {
    name: 'a sentence of 21 words on a homeowner’s page',
    gate: 'languages',
    file: 'text/en/site.json',
    from: '"Use a kitchen timer."',
    to: `"Use a timer${' and a timer'.repeat(6)}."`,
    told: 'text/en/site.json',
    what: 'site:timer.noScript: has a sentence of 21 words; 20 is the most.',
    hint: 'Make two of it.',
  },
  {
    name: 'a numbered line that asks for more than one thing',
    gate: 'languages',
    file: 'text/en/blocks.json',
    from: '"Look from the doorway. Sniff. Listen."',
    to: '"Look from the doorway. Sniff. Listen. Call."',
    told: 'text/en/blocks.json',
    what: 'blocks:stop-unsure.now.1: has 4 sentences; a numbered line has one action.',
    hint: 'Put it into 3 or fewer.',
  },
  {
    name: 'an English sentence in words that the glossary refuses',
    gate: 'languages',
    file: 'text/en/site.json',
    from: '"Use a kitchen timer."',
    to: '"Use a colour timer."',
    told: 'text/en/site.json',
    what: 'site:timer.noScript: the glossary refuses “colour”.',
    hint: 'Say “color”.',
  },
  {
    name: 'a drawing that is not there',
    gate: 'names',
    file: 'guides/burner/graph.yaml',
    from: 'drawing: wipe',
    to: 'drawing: wipes',
    what: '"wipes.svg" is not in src/site/drawings.',
    hint: 'add it there',
  },
  {
    name: 'another deed drawn than the step’s',
    gate: 'names',
    file: 'blocks/power.yaml',
    from: 'drawing: breaker-on',
    to: 'drawing: press',
    what: 'The drawing "press" shows a deed that this page does not ask for.',
    hint: 'src/site/drawings/shows.yaml',
  },
  {
    name: 'a block’s page without words',
    gate: 'sentences',
    file: 'blocks/danger.yaml',
    from: 'none: { to: exit/none, confirm: true }',
    to: 'none: { to: exit/none, confirm: true }\n      bang: { to: stop-bang }\n\n  stop-bang:\n    { kind: stop, danger: bang, urgency: emergency, call: [emergency], care: danger, drawing: fire }',
    told: 'text/en/blocks.json',
    what: '"stop-bang" is missing.',
    hint: 'Add "stop-bang"',
  },
  {
    name: 'a block’s page said otherwise by a guide',
    gate: 'sentences',
    file: 'text/en/burner.json',
    from: '{\n  "what":',
    to: '{\n  "stop-co": {},\n  "what":',
    below: 1,
    what: 'burner:stop-co has the name of a block',
    hint: 'says the same in every guide',
  },
  {
    name: 'a block’s page that no guide takes',
    gate: 'names',
    file: 'blocks/danger.yaml',
    from: '  stop-gas:\n',
    to: '  stop-none: { kind: stop, urgency: soon, call: [technician] }\n  stop-gas:\n',
    what: 'No answer leads to stop-none.',
    hint: 'Lead an answer to it',
  },
  {
    name: 'a flag that nothing raises',
    gate: 'names',
    file: 'flags.yaml',
    from: '- late-light\n',
    to: '- late-light\n- later-light\n',
    below: 1,
    what: 'No answer raises the flag "later-light"',
    hint: 'Raise it with',
  },
  {
    name: 'a block’s sentence for no page',
    gate: 'sentences',
    file: 'text/en/blocks.json',
    from: '{\n  "danger":',
    to: '{\n  "dagner": {},\n  "danger":',
    below: 1,
    what: 'No page shows the sentence blocks:dagner.',
    hint: 'Take it out',
  },
  {
    name: 'a recall of all copies that there are',
    gate: 'names',
    file: 'recall.json',
    from: '"least": 1',
    to: '"least": 99',
    what: 'all copies below release 99, and the newest is release',
    hint: 'Name a release that is there',
  },
  {
    name: 'a recall of a page that never was',
    gate: 'names',
    file: 'recall.json',
    from: '"pages": []',
    to: '"pages": ["/door-locked/near/", "/door-locked/wink/"]',
    what: 'It recalls /door-locked/wink/, and no release has or had such a page.',
    hint: 'Name a page by its address',
  },
  {
    name: 'a made-up visit that no longer fits its guide',
    gate: 'names',
    file: 'demo.json',
    from: '["listen", "hum-on"]',
    to: '["listen", "gone"]',
    told: 'demo.json',
    what: 'No code can be written for the visit "hum"',
    hint: 'Let its answers follow the guide',
  },
  {
    name: 'a release that is gone',
    gate: 'shape',
    file: 'releases/2.json',
    from: '"release": 2',
    to: '"release": 7',
    told: 'releases/2.json',
    what: 'This is release 7.',
    hint: 'Name the file 7.json.',
  },
];

describe('a copy with one slip is refused, with file, line, what is wrong and what to do', () => {
  it.each(slips)('$name', ({ gate, french, file, from, to, below = 0, told, what, hint }) => {
    if (french) speakFrench();
    const line = spoil(copy.folder, file, from, to) + below;
    const place = `${join(copy.folder, told ?? file)}:${told === undefined ? `${String(line)}:` : ''}`;
    const lines = toldBy(gate, copy.folder);
    const found = lines.find((one) => one.startsWith(place) && one.includes(what));
    expect(found, lines.join('\n')).toBeDefined();
    expect(found).toMatch(/:\d+:\d+: .+\n {4}.+/);
    expect(found).toContain(hint);
  });

  /** What French is refused for, and what it is only behind in, once a sentence is gone. */
  function withoutIn(name: string, keys: string): { refused: string[]; behind: string[] } {
    speakFrench();
    const path = join(copy.folder, `text/fr/${name}.json`);
    const value = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>;
    const parts = keys.split('.');
    const last = parts.pop() ?? '';
    const holder = parts.reduce((at, key) => at[key] as Record<string, unknown>, value);
    expect(holder).toHaveProperty(last);
    Reflect.deleteProperty(holder, last);
    writeFileSync(path, JSON.stringify(value));
    const report = languageReport(openContent(copy.folder), 'fr');
    if (!report.ok) throw new Error('no report');
    const { behind, problems } = report.value;
    return {
      refused: problems.flatMap((one) => (one.code === 'safety-missing' ? [one.path] : [])),
      behind: behind.map((one) => one.path),
    };
  }

  it.each([
    ['blocks', 'stop-gas.never'],
    ['blocks', 'danger.answers.gas'],
    ['blocks', 'wait-reach.lines'],
    ['door-locked', 'wait'],
    ['door-locked', 'short-clean.lines'],
    ['door-locked', 'near.care'],
    ['door-locked', 'finish-open.title'],
    ['care', 'topics.foil.never'],
    ['site', 'danger'],
    ['site', 'timer.mayBe'],
    ['preview', 'flags.wont-stop'],
  ])('a language is never without %s:%s', (name, keys) => {
    expect(withoutIn(name, keys)).toEqual({ refused: [`${name}:${keys}`], behind: [] });
  });

  it.each([
    ['door-locked', 'since'],
    ['door-locked', 'controls.why'],
    ['desk', 'title'],
    ['note', 'start'],
  ])('it may be behind in %s:%s, and says so', (name, keys) => {
    expect(withoutIn(name, keys)).toEqual({ refused: [], behind: [`${name}:${keys}`] });
  });

  it('a file that is not there lacks all that would be in it', () => {
    speakFrench();
    rmSync(join(copy.folder, 'text/fr/preview.json'));
    const [first] = toldBy('languages', copy.folder).filter((one) => one.includes('preview:flags'));
    expect(first).toContain('preview:flags: is missing, and it keeps readers safe');
  });

  it('tells a slip of a block’s page once, not once a guide', () => {
    spoil(copy.folder, 'text/en/blocks.json', '      "fire":', '      "flames":');
    const told = checkContent(openContent(copy.folder)).map(tellProblem);
    expect(told.filter((one) => one.includes('"fire" is missing in danger.answers'))).toHaveLength(
      1,
    );
  });

  it('names both lines of a doubled key', () => {
    const file = join(copy.folder, 'text/en/preview.json');
    const first = readFileSync(file, 'utf8')
      .split('\n')
      .findIndex((one) => one.includes('"late-light"'));
    const added = '    "late-light": "Again",\n    "leans": ';
    const second = spoil(copy.folder, 'text/en/preview.json', '    "leans": ', added);
    expect(first).toBeGreaterThan(0);
    expect(toldBy('shape', copy.folder)).toContainEqual(
      expect.stringContaining(
        `${file}:${String(second)}:5: This key is given twice: here and in line ${String(first + 1)}.`,
      ),
    );
  });

  it('an exit of a block, at the guide’s own entry', () => {
    const file = 'guides/burner/graph.yaml';
    const wired = 'danger: { none: what }';
    const entry = spoil(copy.folder, file, wired, wired);
    spoil(
      ...[copy.folder, file, 'rules:\n'],
      'rules:\n  - { answer: danger.none, ends-at: [well] }\n',
    );
    expect(toldBy('proof', copy.folder).join('\n')).toContain(
      `${file}:${String(entry)}:13: danger, answer none, does not lead at once to well.`,
    );
  });

  it('a guide that leads a hot oven’s owner on, with a journey that shows it', () => {
    spoil(
      copy.folder,
      'guides/door-locked/graph.yaml',
      'heat: { to: wait }',
      'heat: { to: try-door }',
    );
    const lines = toldBy('proof', copy.folder).join('\n');
    expect(lines).toMatch(/guides\/door-locked\/graph\.yaml:\d+:\d+: \S+ touches the door/);
    expect(lines).toMatch(/guides\/door-locked\/graph\.yaml:\d+:\d+: \S+ can heat the oven/);
    expect(lines).toMatch(/\d+\. Do you feel heat, or hear a fan\? → /);
    expect(lines).toContain('breaks the promise door-only-when-cool of the guide door-locked');
  });
});

describe('who is called, and where the site is', () => {
  const told = (from: string, to: string): readonly string[] => {
    spoil(copy.folder, 'firm.yaml', from, to);
    return [...toldBy('shape', copy.folder), ...toldBy('regions', copy.folder)];
  };
  const emergency = "{ show: '911', dial: '911' }";
  const phone = "{ show: (207) 555-0142, dial: '+12075550142' }";

  it.each([
    [emergency, "{ show: '911', dial: '+19005550000' }"],
    [emergency, "{ show: '911', dial: '+1900555911' }"],
    [emergency, "{ show: '112', dial: '112' }"],
    [emergency, "{ show: '', dial: '911' }"],
    [emergency, "{ show: call us, dial: '911' }"],
    [emergency, "{ show: '911', dial: '9 1 1' }"],
    [emergency, "{ show: '911', dial: '+1911' }"],
    [phone, "{ show: (207) 555-0142, dial: '+12075550143' }"],
    [phone, "{ show: (207) 555-0142, dial: '2075550124' }"],
    [phone, "{ show: '0142', dial: '+12075550142' }"],
    [phone, "{ show: (207) 555-0142 or 0143, dial: '+12075550142' }"],
    [phone, "{ show: '0', dial: '+12075550140' }"],
    ['site: https://hobnote.example', 'site: javascript:alert(1)'],
    ['site: https://hobnote.example', 'site: ftp://hobnote.example'],
    ['site: https://hobnote.example', 'site: data:text/html,x'],
    ['site: https://hobnote.example', 'site: https://a:b@hobnote.example'],
    ['site: https://hobnote.example', 'site: https://hobnote.example/?x=1'],
    ['region: US', 'region: US # twice\nregion: FR'],
  ])('refuses %s as %s', (from, to) => {
    expect(told(from, to)).not.toEqual([]);
  });

  it.each([
    [phone, "{ show: (207) 555-0142, dial: '2075550142' }"],
    [phone, "{ show: +1 207 555 0142, dial: '+12075550142' }"],
    [phone, "{ show: 02 07 55 50 14, dial: '+33207555014' }"],
    [phone, "{ show: ２０７ ５５５ ０１４２, dial: '+12075550142' }"],
    ['site: https://hobnote.example', 'site: http://localhost:4400/help/'],
  ])('takes %s as %s', (from, to) => {
    expect(told(from, to)).toEqual([]);
  });

  it('takes another number where the region has another', () => {
    spoil(copy.folder, 'firm.yaml', 'region: US', 'region: GB');
    expect(told(emergency, "{ show: '999', dial: '999' }")).toEqual([
      // The made-up firm's Poison Help is a US number.
      expect.stringMatching(/firm\.yaml:\d+:\d+: “1-800-” is not said in GB/),
    ]);
  });

  it.each([
    ['region: US', 'region: FR', '"FR" is not in regions.yaml, which has US, CA, GB'],
    ["dial: '+12075550142'", "dial: '207-555-0142'", 'digits only, for example +44'],
    ['mon: 07:00-19:00', 'mon: 7-19', 'times as 08:00-17:30'],
    ['mon: 07:00-19:00', 'mon: 19:00-07:00', 'each time must be later'],
    ['zone: America/New_York', 'zone: Maine', 'a time zone’s name, for example Europe/London'],
    ['2026-12-25: closed', '25.12.2026: closed', 'a date as 2026-12-25'],
    ['demo: true', "demo: 'no'", 'true or false'],
    ['# frame: [https://www', 'frame: [http://www', 'a site as https://www.range.example'],
    ['logo: logo.svg', 'logo: none.svg', '"none.svg" is not in the folder content'],
    ["# colors: { light: '#1f4f7a'", "colors: { light: '#e8e8e8'", 'Take a darker color'],
    ["# colors: { light: '#1f4f7a'", "colors: { light: '#7a1515'", 'too near to that of "danger"'],
  ])('tells in plain words what is wrong with %s as %s, and where', (from, to, what) => {
    const line = spoil(copy.folder, 'firm.yaml', from, to);
    const lines = [...toldBy('shape', copy.folder), ...toldBy('names', copy.folder)];
    const all = [...lines, ...toldBy('regions', copy.folder)];
    expect(all.join('\n')).toContain(what);
    expect(all[0]).toContain(`firm.yaml:${String(line)}:`);
    expect(all.join('\n')).not.toMatch(
      /Invalid|pattern|expected|received|src\/content\/schema\/firm/,
    );
  });

  it.each([
    ['graph.yaml', 'id: burner', 5, 'This is the guide "elsewhere", in the folder "burner"'],
  ])(
    '%s that names another guide than its folder, told once and at its line',
    (file, from, column, what) => {
      const line = spoil(
        copy.folder,
        `guides/burner/${file}`,
        from,
        from.replace('burner', 'elsewhere'),
      );
      expect(checkContent(openContent(copy.folder)).map(tellProblem)).toEqual([
        expect.stringContaining(`${file}:${String(line)}:${String(column)}: ${what}`),
      ]);
    },
  );

  it('a byte order mark is no slip', () => {
    for (const file of ['text/en/desk.json', 'firm.yaml', 'guides/burner/graph.yaml']) {
      const path = join(copy.folder, file);
      writeFileSync(path, `\ufeff${readFileSync(path, 'utf8')}`);
    }
    expect(checkContent(openContent(copy.folder))).toEqual([]);
  });
});

describe('commands on content with a slip', () => {
  const run = (...words: string[]) =>
    spawnSync(process.execPath, words, {
      ...{ cwd: root, encoding: 'utf8', input: '' },
      env: { ...process.env, CONTENT_DIR: copy.folder },
    });

  it('a release of guides that fail their proof is not frozen', () => {
    spoil(
      copy.folder,
      'guides/door-locked/graph.yaml',
      'under-1: { to: wait, heat-ended: 0 }',
      'under-1: { to: inside, heat-ended: 0 }',
    );
    const before = readdirSync(join(copy.folder, 'releases'));
    const { status, stderr } = run('src/cli/release.ts');
    expect(status).toBe(2);
    expect(stderr).toContain('This breaks the promise');
    expect(stderr).not.toContain('    at ');
    expect(readdirSync(join(copy.folder, 'releases'))).toEqual(before);
  });

  it.each([
    ['firm.yaml', 'region: US', 'region: [', ['src/cli/release.ts']],
    ['details.yaml', 'fuel:', 'fuel: [', ['src/cli/note.ts', 'journeys', 'burner', '--count']],
    ['model/faults.yaml', 'prior: 0.0549', 'prior: [', ['src/cli/note.ts', 'round']],
    ['model/faults.yaml', 'prior: 0.0549', 'prior: [', ['src/cli/prove.ts']],
    ['firm.yaml', 'region: US', 'region: [', ['src/cli/prove.ts']],
  ])('%s with "%s" as "%s": %j tells file and line, no stack', (file, from, to, words) => {
    spoil(copy.folder, file, from, to);
    const { status, stderr } = run(...words);
    expect(stderr).not.toContain('    at ');
    if (status === 0) return;
    expect(status).toBe(2);
    if (!words.includes('round')) expect(stderr).toMatch(/\.yaml:\d+:\d+: /);
  });

  it('a folder that is not there', () => {
    const { status, stderr } = run('src/cli/prove.ts', '--content', join(copy.folder, 'none'));
    expect([status, stderr]).toEqual([2, expect.stringContaining('no such folder')]);
  });
});

describe('npm run build', () => {
  it('stops with these words before any page is made', () => {
    spoil(
      copy.folder,
      'guides/door-locked/graph.yaml',
      'heat: { to: wait }',
      'heat: { to: try-door }',
    );
    const out = join(copy.folder, '..', 'dist');
    const done = spawnSync('npm', ['run', '-s', 'build', '--', out], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, CONTENT_DIR: copy.folder },
    });
    expect(done.status).not.toBe(0);
    expect(done.stdout + done.stderr).toMatch(/graph\.yaml:\d+:\d+: \S+ touches the door/);
    expect(done.stdout + done.stderr).toContain('Nothing is built until this is fixed.');
    expect(existsSync(out)).toBe(false);
  });
});
