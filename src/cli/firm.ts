// npm run firm: who runs this copy, checked or written anew, in plain words.
import { existsSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { checkContent } from '../content/gates.ts';
import { content, firm } from '../content/load.ts';
import { tellProblem } from '../content/tell.ts';
import { command } from './command.ts';

const USAGE = `Use:
  npm run firm -- check    what is wrong with content/firm.yaml, and where
  npm run firm -- new      asks who you are and writes content/firm.yaml; the old one is kept beside it`;

/** Tells every problem that a build would stop at. */
function check(): number {
  const problems = checkContent(content());
  for (const problem of problems) console.error(tellProblem(problem));
  if (problems.length > 0) {
    console.error('\nThe last good build was not touched. Correct this and check again.');
    return 1;
  }
  const { name, phone, region, demo } = firm();
  console.log(`${name}, ${phone.show}, ${region}. Nothing is wrong. Build it: npm run build`);
  if (demo) console.log('"demo: true" makes the about page say that the firm is made up.');
  return 0;
}

/** What a firm must say, in the order asked. */
const QUESTIONS = {
  name: 'The firm’s name',
  short: 'A short name for the header, at most 24 letters',
  region: 'Region: US, CA or GB',
  show: 'Phone number, as people read it',
  dial: 'The same as it is dialed: digits only, for example +441134960142',
  area: 'Where you work, as in “Lantern Lane Range Service, the Lantern Lane neighborhood”',
  zone: 'Time zone, for example America/Toronto or Europe/London',
  weekdays: 'Open Monday to Friday, for example 08:00-17:30',
  saturday: 'Saturday, or closed',
  sunday: 'Sunday, or closed',
  after: 'One sentence: what should people do while you are closed?',
  site: 'Address of this site, for example https://range.example',
  emergency: 'Emergency number: 911, 999 or 112',
  poison: 'Number of the poison line, digits only',
  gas: 'Number to call when gas is smelled, digits only',
  power: 'Number of the power company, digits only',
} as const;
type Answers = Readonly<Record<keyof typeof QUESTIONS, string>>;

const CURRENCY: Readonly<Record<string, string>> = { US: 'USD', CA: 'CAD', GB: 'GBP' };

/** As YAML reads it back: JSON is YAML. */
const q = (text: string): string => JSON.stringify(text);
const same = (number: string): string => `{ show: ${q(number)}, dial: ${q(number)} }`;

function firmFile(told: Answers): string {
  const week = ['mon', 'tue', 'wed', 'thu', 'fri'].map((day) => [day, told.weekdays] as const);
  const open = [...week, ['sat', told.saturday] as const, ['sun', told.sunday] as const];
  return `# Who runs this copy of the site. What else may stand here: README, "Make it your own firm's".
name: ${q(told.name)}
short-name: ${q(told.short)}
region: ${told.region}
phone: { show: ${q(told.show)}, dial: ${q(told.dial)} }
area: ${q(told.area)}
hours:
  zone: ${told.zone}
  open:
${open.map(([day, spans]) => `    ${day}: ${spans}`).join('\n')}
after-hours: ${q(told.after)}
site: ${told.site}
languages: [en]
# What to load is weighed with these: assumptions, put in your own (content/model/parts.yaml has prices).
costs: { currency: ${CURRENCY[told.region] ?? 'USD'}, second-visit: 150, hourly-rate: 90, carrying: 0.15 }
numbers:
  emergency: ${same(told.emergency)}
  poison: ${same(told.poison)}
  gas-company: ${same(told.gas)}
  power-company: ${same(told.power)}
`;
}

async function fresh(): Promise<number> {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  const told: Record<string, string> = {};
  const next = lines[Symbol.asyncIterator]();
  for (const [name, question] of Object.entries(QUESTIONS)) {
    process.stderr.write(`${question}: `);
    const { value, done } = await next.next();
    if (done === true) {
      console.error('\nNothing was written: some answers are missing.');
      return 2;
    }
    told[name] = value.trim();
  }
  lines.close();
  const path = join(content().root, 'firm.yaml');
  const old = `${path}.old`;
  if (existsSync(path)) renameSync(path, old);
  writeFileSync(path, firmFile(told as Answers));
  console.log(`Written: ${path}. The one before is ${old}.`);
  return check();
}

await command(async () => {
  const [, , word] = process.argv;
  if (word === 'check') process.exitCode = check();
  else if (word === 'new') process.exitCode = await fresh();
  else {
    console.error(USAGE);
    process.exitCode = 2;
  }
});
