import { describe, expect, it } from 'vitest';
import { joinGuides } from '../../../src/guide/join.ts';
import { loadGuide, loadPart } from '../../../src/guide/load.ts';
import { prove } from '../../../src/proof/prove.ts';
import type { Guide, Journey, Rule } from '../../../src/guide/types.ts';
import { trace } from '../../../src/journey/trace.ts';
import { edited } from '../guide/support/small.ts';
import { here, there } from '../guide/support/two-guides.ts';

const source = edited(
  'start: danger\n',
  `start: danger
rules:
  - { page: look, most: 1 }
  - { page: ask, needs: look.moved }
  - { page: ask, never-after: look.unsure }
  - { answer: ask.unsure, ends-at: [done] }
`,
).replace('{ a: done, b: ask }, sets', 'done, sets');

function guideOf(text: string): Guide {
  const loaded = loadGuide(text, 'small.yaml');
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

function verdictOf(guide: Guide) {
  const verdict = prove(guide).verdicts.find(({ id }) => id === 'rules-kept');
  if (!verdict) throw new Error('no verdict');
  return verdict;
}

/** Whether one journey breaks a rule, read off the journey itself. */
function breaks(guide: Guide, journey: Journey, rule: Rule): boolean {
  const texts = journey.map(({ at }) => guide.nodes.get(at)?.sentences);
  const answers = journey.map(({ answer }, i) => `${texts[i]}.${answer}`);
  const { end, rest } = trace(guide, journey);
  const stop = rest.length === 0 ? end.sentences : undefined;
  const passed = [...texts, stop];
  if (rule.kind === 'most') return passed.filter((text) => text === rule.page).length > rule.most;
  if (rule.kind === 'ends-at')
    return answers.at(-1) === rule.answer && !rule.ends.includes(stop ?? '');
  return stop === rule.page && answers.includes(rule.answer) === (rule.kind === 'never-after');
}

describe('a guide’s own rules', () => {
  it('hold in the guide as it is', () => {
    const verdict = verdictOf(guideOf(source));
    expect(verdict.holds).toBe(true);
    expect(verdict.journeysConcerned).toBeGreaterThan(0n);
  });

  const slips: readonly [string, string, string, Rule['kind'], string][] = [
    [
      'a page without its answer',
      '{ to: done, sets',
      '{ to: ask, track: b, sets',
      'needs',
      'page-without',
    ],
    [
      'a page despite an answer',
      'unsure: { to: done }\n  ask',
      'unsure: { to: ask, track: b }\n  ask',
      'never-after',
      'page-despite',
    ],
    [
      'an answer that leads elsewhere',
      'unsure: { to: done }\n  stop',
      'unsure: { to: stop-fire }\n  stop',
      'ends-at',
      'ends-elsewhere',
    ],
    [
      'a page once too often',
      "'yes': { to: done }\n      unsure: { to: done }\n",
      "'yes': { to: again }\n      unsure: { to: done }\n  again: { kind: finish, text: look, urgency: none }\n",
      'most',
      'page-again',
    ],
  ];
  it.each(slips)('are broken by %s, with a journey that shows it', (_, from, to, kind, code) => {
    expect(source.split(from)).toHaveLength(2);
    const guide = guideOf(source.replace(from, to));
    const verdict = verdictOf(guide);
    expect(verdict.faults.map((fault) => fault.code as string)).toContain(code);
    const rule = guide.rules?.find((one) => one.kind === kind);
    const shown = verdict.counterExample?.journey ?? [];
    expect(rule && breaks(guide, shown, rule)).toBe(true);
  });

  it('let a page come after an answer where another one was given since', () => {
    const rule = '  - { page: done, never-after: look.seen, unless: ask.unsure }\n';
    const guide = (to: string): Guide =>
      guideOf(
        source
          .replace('nodes:', `${rule}nodes:`)
          .replace('done, sets: [error-seen]', 'ask, track: b')
          .replace("'yes': { to: done }", `'yes': { to: ${to} }`)
          .replace(/ {2}- \{ page: ask, needs.*\n/, ''),
      );
    const broken = guide('done');
    const verdict = verdictOf(broken);
    expect(verdict.faults).toEqual([{ code: 'page-despite', node: 'done', answer: 'look.seen' }]);
    expect(verdict.counterExample?.journey.at(-1)).toEqual({ at: 'ask-b', answer: 'yes' });
    expect(verdictOf(guide('stop-fire')).holds).toBe(true);
    // Given again after that, the answer forbids again: see the random guides.
    expect(broken.rules?.at(-1)).toMatchObject({ kind: 'never-after', unless: 'ask.unsure' });
  });

  it('hold where another guide hands over to it, too', () => {
    const promise = 'entries: [try]\nrules:\n  - { page: try, needs: look.unsure }';
    const parts = [here, there.replace('entries: [try]', promise)].map((text) => {
      const part = loadPart(text, 'graph.yaml');
      if (!part.ok) throw new Error(JSON.stringify(part.error));
      return part.value;
    });
    const joined = joinGuides(parts);
    const [first] = joined.ok ? joined.value : [];
    expect(first && verdictOf(first).faults).toContainEqual({
      ...{ code: 'page-without', node: 'there/try', answer: 'there/look.unsure' },
    });
  });
});
