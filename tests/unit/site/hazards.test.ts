import { expect, it } from 'vitest';
import { guides } from '../../../src/content/load.ts';
import { ownNodes } from '../../../src/guide/ids.ts';
import { hazardsOf } from '../../../src/site/build/keep-offline.ts';

it('an answer waits for the recall on every page with heat, a breaker or the door, and on no other', () => {
  const pages = guides().flatMap(hazardsOf);
  const nodes = guides().flatMap((guide) =>
    ownNodes(guide).map((node) => [`${guide.id}/${node.id}/`, node] as const),
  );
  const known = Object.fromEntries(nodes);
  for (const page of ['breaker-off', 'breaker-on', 'try-door', 'short-clean'])
    expect(pages).toContain(`door-locked/${page}/`);
  for (const page of ['danger', 'since', 'display'])
    expect(pages).not.toContain(`door-locked/${page}/`);
  expect(pages.length).toBeGreaterThan(10);
  for (const page of pages) expect(known[page]?.kind, page).toBe('step');
});
