// The desk's first page: every guide can be chosen there, and its call writes a code of its own.
import { readCode } from '../../src/note/read.ts';
import { namespaceText } from '../../src/site/words.ts';
import { axe } from './support/axe.ts';
import { codebooks, newest } from './support/codebooks.ts';
import { rows, say } from './support/desk.ts';
import { expect, test } from './support/fixtures.ts';
import { guides } from './support/shortest-journeys.ts';

const { names } = namespaceText('en', 'guides') as { names: Record<string, string> };

test('every guide is chosen by a tap or a number key, and the call is in its words', async ({
  page,
}) => {
  const choices = page.locator('.choose .choices button');
  const chosen = new Set<string>();
  for (const nth of guides.keys()) {
    await page.goto('/desk/');
    await expect(choices).toHaveCount(guides.length);
    if (nth === 0) await axe(page);
    const label = (await choices.nth(nth).textContent()) ?? '';
    const guide = guides.find(({ id }) => label.endsWith(names[id] ?? 'no name'));
    expect(guide, label).toBeDefined();
    if (!guide) continue;
    chosen.add(guide.id);
    if (nth % 2 === 0) await choices.nth(nth).click();
    else await page.keyboard.press(String(nth + 1));
    const none = page.getByRole('button', { name: 'None of these' });
    await none.click();
    await expect(rows(page)).toHaveCount(1);
    const [first] = guide.nodes.get(guide.start)?.answers.filter(({ id }) => id === 'none') ?? [];
    const title = namespaceText('en', guide.id)[first?.to ?? ''] as { title: string };
    await expect(say(page)).toHaveText(title.title);
    const code = (await page.locator('.code-out .groups strong').allTextContents()).join('-');
    const reading = readCode(code, codebooks);
    expect(reading, guide.id).toMatchObject({
      kind: 'exact',
      note: { release: newest, guide: guide.id, journey: [{ at: guide.start, answer: 'none' }] },
    });
  }
  expect([...chosen].toSorted()).toEqual(guides.map(({ id }) => id as string).toSorted());
});
