import { describe, expect, test } from 'vitest';
import { checkKey, detailKey, evidenceOf, seenFrom } from '../../../src/diagnosis/evidence.ts';
import { informative } from '../../../src/diagnosis/posterior.ts';
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
    const keys = new Set([
      ...[...guide.nodes.values()].map(({ sentences }) => sentences),
      ...details.map(({ id }) => detailKey(id)),
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

describe('evidence of a journey that went over into another guide', () => {
  test('is named as the tables of the last guide name it, details as ever', () => {
    const evidence = [
      { key: 'doing', answer: 'ended' },
      { key: 'other/seen', answer: 'yes' },
      { key: 'third/more', answer: 'no' },
      { key: 'detail.fuel', answer: 'gas' },
    ];
    expect(seenFrom('other', 'first', evidence)).toEqual([
      { key: 'first/doing', answer: 'ended' },
      { key: 'seen', answer: 'yes' },
      { key: 'third/more', answer: 'no' },
      { key: 'detail.fuel', answer: 'gas' },
    ]);
    const own = evidence.filter(({ key }) => !key.includes('/'));
    expect(own.length).toBeGreaterThan(1);
    expect(seenFrom('first', 'first', own)).toEqual(own);
  });
});
