/** Codes of releases 1 to 4 say what they said before their guides were rewritten, whatever today's guides are. */
import { describe, expect, it } from 'vitest';
import { parseJourney } from '../../../src/address/journey-text.ts';
import { currentCodebooks } from '../../../src/content/codebooks.ts';
import { content, releases } from '../../../src/content/load.ts';
import type { GraphNode } from '../../../src/guide/types.ts';
import { trace } from '../../../src/journey/trace.ts';
import { codebookGuide } from '../../../src/note/codebook.ts';
import { readCode } from '../../../src/note/read.ts';
import { completed, isWhole } from '../../../src/note/retired.ts';
import { writeCode } from '../../../src/note/write.ts';
import { asGuideId, codebookOf, smallRelease } from './codebooks.ts';

const current = currentCodebooks(content(), new Date('2026-11-27'));
if (!current.ok) throw new Error(JSON.stringify(current.error));
const { codebooks } = current.value;
const old = releases().slice(0, 4);

/** What staff are told of a journey of release 4, by way of its code. */
function shown(guide: string, text: string) {
  const note = { release: 4, guide: asGuideId(guide), day: 3, details: {}, error: '' };
  const code = writeCode({ ...note, journey: parseJourney(text) }, codebooks);
  const reading = code.ok ? readCode(code.value, codebooks) : undefined;
  if (reading?.kind !== 'exact') throw new Error(`${guide} ${text}: ${JSON.stringify(code)}`);
  const book = codebookGuide(codebookOf(codebooks, 4), guide) ?? expect.unreachable(guide);
  const { steps, rest, flags, heatEnded } = trace(book, reading.note.journey);
  expect(rest).toEqual([]);
  const at = ({ page, track }: GraphNode): string => `${String(track)}/${page}`;
  return { flags, heatEnded, pages: steps.map(({ node }) => at(node)) };
}

/** Pages of one track after another. */
const on = (track: string, pages: string): string[] =>
  pages.split(' ').map((page) => `${track}/${page}`);

describe('a code of release 4', () => {
  it('tells of a burner that lit late', () => {
    const way = 'danger.none~what.no-light~gas-off.done~power.yes~click.late';
    expect(shown('burner', way)).toEqual({
      flags: ['burner-late-light'],
      heatEnded: undefined,
      pages: on('main', 'danger what gas-off power click'),
    });
  });

  it('tells of cracked glass by the name that the flag has now', () => {
    const way = 'danger.none~what.element~el-off.done~el-kind.cracked';
    expect(shown('burner', way).flags).toEqual(['cracked-glass', 'breaker-off']);
  });

  it('tells of a forced door and a tripped breaker on the track of cold ovens', () => {
    const way =
      'danger.none~doing.ended~display.error~error-write-cold.written~since-cold.1-to-4~fan-cold.quiet~near-cold.cool~inside-cold.foil~foil-care-cold.read~forced-cold.yes~controls-cold.lever~lever-cold.stuck~try-door-cold.stuck~panel-cold.ready~controls-off-cold.done~breaker-off-cold.done~breaker-on-cold.tripped';
    expect(shown('door-locked', way)).toEqual({
      flags: ['tripped', 'breaker-off', 'error-seen', 'door-forced', 'foil'],
      heatEnded: 60,
      pages: [
        ...on('open', 'danger doing display'),
        ...on('cold', 'error-write since fan near inside foil-care forced controls lever try-door'),
        ...on('cold', 'panel controls-off breaker-off breaker-on'),
      ],
    });
  });

  it('knows copies on the track without a self-clean', () => {
    const way =
      'danger.none~doing.never~lock-key-plain.no-key~display-plain.time~near-plain.warm~wait-plain.still-hot';
    expect(shown('door-locked', way)).toEqual({
      flags: ['still-hot'],
      heatEnded: undefined,
      pages: [...on('open', 'danger doing'), ...on('plain', 'lock-key display near wait')],
    });
  });

  it('forgets how long ago the heat ended after a step that heats', () => {
    const way =
      'danger.none~doing.ended~display.time~since.over-4~fan.quiet~near.cool~inside.nothing~forced.no~controls.knob-moved~selector-set';
    expect(shown('door-locked', way.replace('~selector-set', '')).heatEnded).toBe(240);
    expect(shown('door-locked', `${way}.started`)).toMatchObject({
      flags: ['heat-started'],
      heatEnded: undefined,
    });
  });

  it('raises no flag for a homeowner who is not sure', () => {
    const way =
      'danger.none~doing.ended~display.time~since.unsure~fan.quiet~near.cool~inside.nothing~forced.unsure';
    expect(shown('door-locked', way).flags).toEqual([]);
  });
});

describe('releases 1 to 4', () => {
  const nodes = old.flatMap(({ release }) =>
    codebookOf(codebooks, release).guides.flatMap((guide) => [...guide.nodes.values()]),
  );

  it('know the track of every question and step, and none of an end', () => {
    expect(nodes.length).toBeGreaterThan(1000);
    for (const { id, track, answers } of nodes)
      expect(track === undefined, id).toBe(answers.length === 0);
  });

  it('name a page otherwise than the node only where it is a copy on another track', () => {
    const copies = nodes.filter(({ id, page }) => id.replace(/^.*\//, '') !== page);
    expect(copies.length).toBeGreaterThan(100);
    for (const { id, page, track } of copies)
      expect(id.replace(/^.*\//, '')).toBe(`${page}-${String(track)}`);
  });

  it.each([
    ['burner', 'near-el', 'near'],
    ['burner', 'wait-el', 'wait'],
    ['no-heat', 'fuel-blank', 'fuel'],
    ['no-heat', 'lock-key-gas', 'lock-key'],
    ['no-heat', 'settings-gas', 'settings'],
  ])('have %s/%s as a page of its own, though it borrows sentences', (guide, page, sentences) => {
    const found = nodes.filter((node) => node.guide === guide && node.page === page);
    expect(found.length).toBeGreaterThan(0);
    for (const node of found) expect(String(node.sentences).replace(/^.*\//, '')).toBe(sentences);
  });
});

describe('what is kept of retired guides', () => {
  const retired = { small: { tracks: ['main'], pages: { first: { flag: 'hum' } } } };

  it('completes a release that froze no tracks, and no other', () => {
    const release = smallRelease(1);
    expect(isWhole(release)).toBe(false);
    const whole = completed(release, retired);
    expect(isWhole(whole)).toBe(true);
    expect(whole.guides[0]?.nodes[0]).toMatchObject({ track: 'main', marks: { flag: 'hum' } });
    expect(completed(whole, { small: { tracks: ['open'], pages: {} } })).toBe(whole);
  });
});
