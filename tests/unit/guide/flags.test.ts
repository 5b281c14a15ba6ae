/** Safety flags: what guides raise, in which order, and how they are worded. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../src/cli/root.ts';
import { guides, staffLanguages } from '../../../src/content/load.ts';
import { noBlocks } from '../../../src/guide/blocks.ts';
import { loadFlags } from '../../../src/guide/flags.ts';
import { loadGuide } from '../../../src/guide/load.ts';
import { smallSource } from './support/small.ts';

const loaded = loadFlags(readFileSync(inRoot('content/flags.yaml'), 'utf8'), 'flags.yaml');
const flags = loaded.ok ? loaded.value : [];
const raised = new Set(
  guides().flatMap(({ nodes }) =>
    [...nodes.values()].flatMap(({ flag, answers }) => [flag, ...answers.map((one) => one.flag)]),
  ),
);
raised.delete(undefined);

describe('the flags of content/flags.yaml', () => {
  it('stand there once each, are raised by some guide, and no other is', () => {
    expect(flags.length).toBeGreaterThan(20);
    expect(new Set(flags).size).toBe(flags.length);
    expect([...raised].toSorted()).toEqual(flags.toSorted());
    for (const guide of guides()) expect(guide.flags).toEqual(flags);
  });

  it.each(staffLanguages())(
    'have words of their own in "%s", each once in the file',
    (language) => {
      const text = readFileSync(inRoot(`content/text/${language}/preview.json`), 'utf8');
      const words = (JSON.parse(text) as { flags: Record<string, string> }).flags;
      const { title, none, danger, ...own } = words;
      expect([title, none, danger].every(Boolean)).toBe(true);
      expect(Object.keys(own).toSorted()).toEqual(flags.toSorted());
      expect(new Set(Object.values(own)).size).toBe(flags.length);
      const [, block = ''] = /"flags": \{([^}]*(?:\{\{[^}]*\}\}[^}]*)*)\n {2}\}/.exec(text) ?? [];
      for (const flag of flags) expect(block.split(`"${flag}":`), flag).toHaveLength(2);
    },
  );

  it('put gas that gathers before any harm to the oven alone', () => {
    const place = (flag: string) => flags.indexOf(flag);
    for (const gas of ['late-light', 'burner-late-light', 'yellow-flame'])
      for (const oven of ['foil', 'hum', 'something-inside']) {
        expect(place(gas)).toBeGreaterThanOrEqual(0);
        expect(place(gas)).toBeLessThan(place(oven));
      }
  });
});

describe('a flag in a file', () => {
  it('is refused twice in the list, with its place', () => {
    expect(loadFlags('- hum\n- foil\n- hum\n', 'flags.yaml')).toEqual({
      ok: false,
      error: [
        {
          ...{ code: 'flag-repeated', flag: 'hum', file: 'flags.yaml' },
          place: { line: 3, column: 3 },
        },
      ],
    });
  });

  it('is refused in a graph where the list does not have it, with its place', () => {
    const text = smallSource.replace("'yes': { to: done }", "'yes': { to: done, flag: hmu }");
    const guide = loadGuide(text, 'small.yaml', { ...noBlocks, flags: ['hum'] });
    const line = text.split('\n').findIndex((one) => one.includes('hmu')) + 1;
    expect(guide.ok ? [] : guide.error).toEqual([
      {
        ...{ code: 'flag-unknown', node: 'ask', answer: 'yes', flag: 'hmu', known: ['hum'] },
        ...{ file: 'small.yaml', place: { line, column: expect.any(Number) as number } },
      },
    ]);
  });
});
