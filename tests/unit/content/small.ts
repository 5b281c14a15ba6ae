/** Content as small as can be: two guides, of which one hands over to the other, and two blocks. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { namespaces, ownerTexts } from '../../../src/content/texts.ts';
import { groups } from '../../../src/visit/staff-view.ts';

/** A text by path. */
export type Files = Readonly<Record<string, string>>;

const json = (value: unknown): string => JSON.stringify(value, undefined, 2);

const page = { short: 'It', title: 'What is it?', why: 'We ask.' };
const book = { short: 'Book', title: 'Stop here', never: ['Do not use it.'] };
const pages = {
  blocks: {
    danger: { ...page, answers: { fire: 'Fire', unsure: 'Not sure', none: 'None' } },
    'stop-fire': { ...book, now: ['Get out.'] },
    'stop-unsure': { ...book, now: ['Step out.', 'Look. Sniff. Listen.'] },
    'stop-book': { ...book, now: ['Call {{firm}} at {{phone}}.'], desk: { call: 'Book it.' } },
  },
  small: {
    look: { ...page, answers: { seen: 'Seen', fine: 'Fine', hot: 'Hot', unsure: 'Not sure' } },
    ask: { ...page, answers: { yes: 'Yes', unsure: 'Not sure' } },
    done: { short: 'Done', title: 'You are done', lines: ['Use it.'], never: ['Do not pull.'] },
  },
  aside: { what: { ...page, answers: { shown: 'Shown', unsure: 'Not sure' } } },
};

/** The same in Spanish. */
const seite = { short: 'Eso', title: '¿Qué es?', why: 'Le pedimos.' };
const cita = { short: 'Cita', title: 'Pare ya', never: ['No lo use.'] };
const paginas = {
  blocks: {
    danger: { ...seite, answers: { fire: 'Fuego', unsure: 'No lo sé', none: 'Nada' } },
    'stop-fire': { ...cita, now: ['Salga.'] },
    'stop-unsure': { ...cita, now: ['Salga ya.', 'Mire. Huela. Oiga.'] },
    'stop-book': { ...cita, now: ['Llame a {{firm}} al {{phone}}.'] },
  },
  small: {
    look: { ...seite, answers: { seen: 'Lo vi', fine: 'Bien', hot: 'Arde', unsure: 'No lo sé' } },
    ask: { ...seite, answers: { yes: 'Sí', unsure: 'No lo sé' } },
    done: { short: 'Ya', title: 'Ya está', lines: ['Úselo.'], never: ['No jale.'] },
  },
  aside: { what: { ...seite, answers: { shown: 'Sale', unsure: 'No lo sé' } } },
};

const textFiles = (language: string, texts: Readonly<Record<string, unknown>>): Files =>
  Object.fromEntries(
    Object.entries(texts).map(([name, text]) => [`text/${language}/${name}.json`, json(text)]),
  );

/** All that the gates of sentences, languages and proof ask for; other parts are not there. */
export const small: Files = {
  'firm.yaml': `name: Small Range Service
phone: { show: (207) 555-0142, dial: '+12075550142' }
hours: { zone: America/New_York, open: {} }
after-hours: Leave a message.
area: here
site: https://small.example
region: US
languages: [en, es]
costs: { currency: USD, second-visit: 1, hourly-rate: 1, carrying: 0.5 }
numbers:
  emergency: { show: '911', dial: '911' }
  poison: { show: '555', dial: '555' }
  gas-company: { show: '555', dial: '555' }
  power-company: { show: '555', dial: '555' }
`,
  'languages.yaml': `en: { name: English, direction: ltr, staff: true }
es: { name: Español, direction: ltr, staff: false }
`,
  'flags.yaml': '- bang\n',
  'glossaries/en.json': json({
    color: { use: ['color'], never: [String.raw`\bcolour\b`], why: 'US' },
  }),
  'blocks/danger.yaml': `exits: [none]
nodes:
  danger:
    kind: question
    answers:
      fire: { to: stop-fire }
      unsure: { to: stop-unsure }
      none: { to: exit/none }
  stop-fire: { kind: stop, danger: fire, urgency: emergency, call: [emergency] }
  stop-unsure: { kind: stop, danger: unsure, urgency: emergency, call: [emergency] }
`,
  'blocks/ends.yaml': `nodes:
  stop-book: { kind: stop, urgency: soon, call: [technician] }
`,
  'guides/aside/graph.yaml': `id: aside
tracks: [main]
start: danger
blocks: { danger: { none: what } }
nodes:
  what:
    kind: question
    answers:
      shown: { to: small/ask, sets: [error-seen], flag: bang }
      unsure: { to: stop-book }
`,
  'guides/small/graph.yaml': `id: small
tracks: [main]
start: danger
entries: [ask]
blocks:
  danger: { none: look }
optional:
  short-self-clean: { pages: [stop-off], instead: stop-book }
nodes:
  look:
    kind: question
    answers:
      seen: { to: ask, sets: [error-seen] }
      fine: { to: done }
      hot: { to: stop-off, sets: [trouble-seen] }
      unsure: { to: stop-book }
  ask:
    kind: question
    answers:
      'yes': { to: stop-book }
      unsure: { to: stop-book }
  stop-off: { kind: stop, urgency: soon, call: [technician] }
  done: { kind: finish, done: true, urgency: none }
`,
  ...textFiles('en', Object.fromEntries([...namespaces, 'model'].map((name) => [name, {}]))),
  ...textFiles('en', {
    ...pages,
    small: { ...pages.small, 'stop-off': { ...book, now: ['Leave it off.'] } },
    guides: { names: { aside: 'Aside', small: 'Small' } },
    preview: {
      flags: { bang: 'It banged' },
      groups: Object.fromEntries(groups.map((id) => [id, 'It'])),
    },
  }),
  ...textFiles('es', Object.fromEntries(ownerTexts.map((name) => [name, {}]))),
  ...textFiles('es', {
    ...paginas,
    small: { ...paginas.small, 'stop-off': { ...cita, now: ['No lo use.'] } },
    guides: { names: { aside: 'Al lado', small: 'Poco' } },
  }),
};

/** A folder with these files; without those whose text is none. `done` takes it away. */
export function folderOf(files: Readonly<Record<string, string | undefined>>) {
  const folder = mkdtempSync(join(tmpdir(), 'small-'));
  for (const [path, text] of Object.entries(files)) {
    if (text === undefined) continue;
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return { folder, done: () => rmSync(folder, { recursive: true }) };
}
