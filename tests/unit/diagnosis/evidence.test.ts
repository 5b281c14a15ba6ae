import { describe, expect, test } from 'vitest';
import { checkKey, detailKey, evidenceOf, observed } from '../../../src/diagnosis/evidence.ts';
import { informative } from '../../../src/diagnosis/posterior.ts';
import { qualify } from '../../../src/guide/ids.ts';
import type { Journey } from '../../../src/guide/types.ts';
import { given, realContext, realModel } from './support/real.ts';

const { guide, details } = realContext();
const journey = (...pairs: readonly string[]) =>
  pairs.map((pair) => {
    const [at = '', answer = ''] = pair.split('.');
    return { at, answer };
  }) as unknown as Journey;

describe('a journey as evidence', () => {
  test('keeps the order of the answers, details last', () => {
    const found = evidenceOf(guide, journey('danger.none', 'since.over-4', 'display.time'), {
      fuel: 'gas',
      age: 'over-15',
    });
    expect(found).toEqual(
      given('danger.none', 'since.over-4', 'display.time', 'detail.fuel.gas', 'detail.age.over-15'),
    );
  });

  test("answers on another track count under the node's text", () => {
    const copies = [...guide.nodes.values()].filter(
      ({ id, sentences }) => String(id) !== sentences,
    );
    expect(copies.length).toBeGreaterThan(5);
    for (const { id, sentences: text, answers } of copies) {
      const answer = String(answers[0]?.id ?? 'none');
      const one = journey(`${id}.${answer}`);
      expect(evidenceOf(guide, one)).toEqual([{ key: text, answer }]);
    }
  });

  test('of two steps that share their sentences the later answer stands, in its later place', () => {
    const twice = [...guide.nodes.values()].filter(({ sentences }) => sentences === 'try-again');
    const [before, after] = twice;
    if (!before || !after) throw new Error('the guide has no shared step');
    const found = evidenceOf(
      guide,
      journey(`${before.id}.stuck`, 'listen.click', `${after.id}.opened`),
    );
    expect(found).toEqual(given('listen.click', 'try-again.opened'));
  });

  test('a node the guide does not have is passed over', () => {
    expect(evidenceOf(guide, journey('no-such-node.yes'))).toEqual([]);
  });

  test('every table belongs to a question or a detail, and each of its answers informs', () => {
    const model = realModel();
    const pages = [...guide.nodes.values()].map(({ sentences }) => qualify(guide.id, sentences));
    const keys = new Set([
      ...pages,
      ...pages.map((page) => page.slice(page.indexOf('/') + 1)),
      ...details.map(({ id }) => detailKey(id)),
      ...['complaint', 'visit'],
    ]);
    expect(model.evidence.length).toBeGreaterThan(20);
    for (const { key, answers } of model.evidence) {
      expect([...keys]).toContain(key);
      for (const answer of answers) expect(informative(model, [{ key, answer }])).toHaveLength(1);
      expect(informative(model, [{ key, answer: 'unsure' }])).toEqual([]);
    }
  });

  test('keys of details and checks', () => {
    expect([detailKey('fuel'), checkKey('supply')]).toEqual(['detail.fuel', 'check.supply']);
  });
});

describe('a journey as the model names it', () => {
  const model = realModel();
  const course = { first: 'door-locked', last: 'door-locked' };

  test('has the complaint first, and pages with their guide only where guides share the name', () => {
    const seen = observed(model, course, given('since.over-4', 'listen.click', 'detail.fuel.gas'));
    expect(seen).toEqual(
      given('complaint.door-locked', 'door-locked/since.over-4', 'listen.click', 'detail.fuel.gas'),
    );
  });

  test('says a page of a block the same, whichever guide asked', () => {
    const pages = ['off-once.same', 'error-shows/off-once.same', 'no-heat/off-once.same'];
    for (const page of pages)
      expect(observed(model, course, given(page))[1]).toEqual({ key: 'off-once', answer: 'same' });
    // Asked again, the later answer stands.
    expect(
      observed(model, course, given('off-once.same', 'error-shows/off-once.changed')).slice(1),
    ).toEqual(given('off-once.changed'));
  });

  test('complains of what a hand-over led to, and of where it began if that is not known', () => {
    const complaint = (first: string, last: string) =>
      observed(model, { first, last }, [])[0]?.answer;
    expect(complaint('error-shows', 'door-locked')).toBe('door-locked');
    expect(complaint('door-locked', 'something-else')).toBe('door-locked');
    expect(complaint('something-else', 'something-else')).toBeUndefined();
  });

  test('needs the visit that it ended in', () => {
    const seen = observed(model, { ...course, visit: true }, given('listen.click'));
    expect(seen.at(-1)).toEqual({ key: 'visit', answer: 'needed' });
  });
});
