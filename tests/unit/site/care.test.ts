// Only that each line names a source is held here; whether the source says so was read by people.
import { describe, expect, it } from 'vitest';
import { careFor, careText, sourcesOf } from '../../../src/site/care.ts';
import { PRACTICE, careParts } from '../../../src/content/schema/care.ts';
import { carePages, guides, sources } from '../../../src/content/load.ts';
import { count, gradeOf, hardest } from '../../../src/text/readability.ts';

const pages = carePages();
const texts = pages.map((page) => careText('en', page));
const claims = texts.flatMap((text) => careParts.flatMap((part) => text[part]));

describe('the care pages', () => {
  it('are there, each under a name of its own', () => {
    const ids = pages.map(({ id }) => id);
    expect(ids.length).toBeGreaterThan(0);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('name for every line a listed source or common practice', () => {
    expect(claims.length).toBeGreaterThan(60);
    const known = [PRACTICE, ...Object.keys(sources())];
    for (const { text, from } of claims) expect(known, text).toContain(from);
  });

  it('use every listed source, and show it on the page', () => {
    const shown = new Set(texts.flatMap(sourcesOf));
    expect(shown.size).toBeGreaterThan(5);
    expect([...shown].toSorted()).toEqual(Object.keys(sources()).toSorted());
  });

  // Grade 6 to 8 is what plain-language advice for the public asks for; Flesch–Kincaid.
  it.each(texts.map((text) => [text.title, text] as const))('read easily: %s', (title, text) => {
    const passages = [
      title,
      text.lead,
      ...careParts.flatMap((part) => text[part].map((claim) => claim.text)),
    ];
    expect(count(passages).words).toBeGreaterThan(60);
    expect(gradeOf(passages), JSON.stringify(hardest(passages, 3))).toBeLessThanOrEqual(6);
    for (const { text: sentence } of text.never) expect(sentence).toMatch(/^Do not /);
  });

  it('are led to from pages that are there', () => {
    const places = pages.flatMap(({ id, from }) => from.map((page) => [id, page] as const));
    expect(places.length).toBeGreaterThan(3);
    for (const [id, place] of places) {
      const [of = '', text] = place.split('/');
      const led = guides()
        .filter((guide) => of === '*' || of === guide.id)
        .flatMap((guide) =>
          [...guide.nodes.values()]
            .filter((node) => node.text === text)
            .map((node) => careFor(guide, node.text)?.id),
        );
      expect(led.length, place).toBeGreaterThan(0);
      expect(new Set(led), place).toEqual(new Set([id]));
    }
  });
});
