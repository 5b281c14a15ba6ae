import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadDetails } from '../../../src/guide/details.ts';

const url = new URL('../../../content/details.yaml', import.meta.url);

describe('loadDetails', () => {
  it('keeps the order of the published file, which is part of the note code', () => {
    const source = readFileSync(url, 'utf8');
    const loaded = loadDetails(source, 'details.yaml');
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
    const ids = loaded.value.map(({ id }) => id);
    // The order of the lines, by the plainest reading there is.
    expect(ids).toEqual([...source.matchAll(/^([a-z-]+):/gm)].map(([, id]) => id));
    expect(loaded.value.find(({ id }) => id === 'push')?.answers).toEqual(['yes', 'no']);
  });

  it.each([
    ['a detail with one answer', 'fuel: [gas]', 'value-wrong', 1, 7],
    ['a malformed answer', 'fuel: [gas, Oil Burner]', 'name-malformed', 1, 13],
    ['a malformed detail', 'fuel: [gas, oil]\n8: [a, b]', 'name-malformed', 2, 1],
    ['no map', '- fuel', 'value-wrong', 1, 1],
    ['no YAML', 'fuel: [gas', 'yaml-syntax', 1, 11],
  ])('tells %s with its place', (_, source, code, line, column) => {
    expect(loadDetails(source, 'details.yaml')).toMatchObject({
      ok: false,
      error: [{ code, file: 'details.yaml', place: { line, column } }],
    });
  });

  it('tells every problem', () => {
    const loaded = loadDetails('fuel: [gas]\nkind: 3\nage: [A, b]', 'details.yaml');
    expect(loaded.ok ? [] : loaded.error.map(({ place }) => place.line)).toEqual([1, 2, 3]);
  });
});
