// The technician's page: damaged codes are proposals, hopeless ones are refused with words.
import { readFileSync } from 'node:fs';
import { jobSchema } from '../../src/cli/job-json.ts';
import { protect } from '../../src/note/blocks.ts';
import { readCode } from '../../src/note/read.ts';
import { groupedText } from '../../src/note/symbols.ts';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { noSidewaysScroll } from './support/layout.ts';
import {
  CODE,
  enter,
  field,
  json,
  codebooks,
  note,
  open,
  other,
  plain,
  put,
  status,
} from './support/preview.ts';

test.describe('a damaged code is a proposal', () => {
  const swapAt = [...plain].findIndex((sign, at) => at > 4 && sign !== plain.charAt(at + 1));
  const dropAt = [...plain].findIndex(
    (sign, at) => at > 4 && sign !== plain.charAt(at + 1) && sign !== plain.charAt(at - 1),
  );
  const at = (place: number) => plain.charAt(place);
  for (const [what, input, words, changed] of [
    ['a wrong character', put(5, other(5)), `character 2: ${at(5)} instead of`, [other(5) + at(5)]],
    [
      'two wrong characters',
      put(5, other(5)).slice(0, 9) + other(9) + plain.slice(10),
      `Group 3, character 2: ${at(9)} instead of ${other(9)}`,
      [other(5) + at(5), other(9) + at(9)],
    ],
    [
      'a swap',
      put(swapAt, at(swapAt + 1) + at(swapAt)),
      'neighbors swapped',
      [at(swapAt + 1) + at(swapAt), at(swapAt) + at(swapAt + 1)],
    ],
    ['a dropped character', put(dropAt, '', 1), `${at(dropAt)} was missing`, [`·${at(dropAt)}`]],
    ['an added character', put(5, other(5) + at(5), 1), 'removed', [`${other(5)}·`]],
    ['an unreadable character', put(5, '?'), `${at(5)} filled in for ?`, [`?${at(5)}`]],
  ] as const)
    test(what, async ({ page }) => {
      await open(page);
      await enter(page, input);
      await expect(status(page)).toContainText('with the caller.');
      await expect(page.locator('.repair')).toContainText(words);
      await expect(page.locator('.repair .unseen')).toHaveText(CODE);
      // Letter over letter, what was entered above; what differs is told by a shape too.
      await expect(page.locator('.repair .compared .changed')).toHaveText([...changed]);
      const arrow = (place: Element) => getComputedStyle(place, '::after').content;
      expect(await page.locator('.compared .changed').first().evaluate(arrow)).toBe('"▲"');
      await expect(note(page)).toBeHidden();
      await axe(page);
      await noSidewaysScroll(page);
      await page.getByRole('button', { name: 'Yes, that is what the caller reads' }).click();
      await expect(status(page)).toContainText('Confirmed by the caller.');
      await expect(field(page)).toHaveValue(CODE);
      await expect(note(page)).toBeVisible();
      expect(new URL(page.url()).hash).toBe(`#c=${CODE}`);
    });

  test('where copying is blocked the job stands selected, as text and as JSON', async ({
    page,
  }) => {
    await page.addInitScript(() => {
      Object.defineProperty(navigator, 'clipboard', { value: undefined });
    });
    await open(page, `#c=${CODE}`);
    for (const button of ['Copy job', 'Copy JSON']) {
      await page.getByRole('button', { name: button }).click();
      const text = page.getByLabel('Your browser blocks copying').last();
      await expect(text).toBeFocused();
      const given = await text.inputValue();
      expect(await page.evaluate(() => getSelection()?.toString())).toBe(given);
      expect(given).toContain(CODE);
      if (button === 'Copy JSON') jobSchema.parse(JSON.parse(given));
    }
    await axe(page);
  });

  test('five unreadable ones leave little to check with, and it says so', async ({ page }) => {
    await open(page, `#c=${encodeURIComponent(put(3, '?????'))}`);
    await expect(page.locator('.repair')).toContainText('Compare every character.');
  });

  test('not confirmed shows no note and keeps the text', async ({ page }) => {
    await open(page);
    await enter(page, put(5, other(5)));
    await page.getByRole('button', { name: 'No', exact: true }).click();
    await expect(status(page)).toContainText('Not confirmed.');
    await expect(field(page)).toHaveValue(put(5, other(5)));
    await expect(field(page)).toBeFocused();
    await expect(note(page)).toBeHidden();
    await axe(page);
  });
});

test.describe('a refused code says why and what to do', () => {
  const beyond = new Uint8Array(10).fill(15, 9);
  const REFUSED = [
    ['empty', '- -', /No code yet/],
    ['too-long', 'A'.repeat(90), /too long/],
    ['too-short', 'ABCD', /has 4 characters.* at least 16/],
    ['wrong-length', 'ABCD-EFGH-JKMN-PQRS-TV', /has 18 characters.* 16 or 20/],
    ['bad-symbol', 'ABCD-EFGH-JKMN-PQRU', /character U after 15 characters/],
    ['bad-word', 'Alfa Bravo Charley Delta', /word charley after 2/],
    ['too-many-unreadable', put(0, '??????'), /6 characters are marked \?.* 5 can/],
    ['too-damaged', put(0, [0, 1, 2, 3].map((at) => other(at)).join('')), /Too many characters/],
    ['unknown-release', groupedText(protect(beyond, 16)), /release 16 of the guides/],
    ['impossible', groupedText(protect(new Uint8Array(14), 20)), /wrong length/],
  ] as const;

  test('one after another, what was typed left as it was', async ({ page }) => {
    await open(page);
    for (const [problem, input, words] of REFUSED)
      await test.step(problem, async () => {
        const reading = readCode(input, codebooks);
        expect(reading.kind === 'refused' && reading.problem.code).toBe(problem);
        await enter(page, input);
        await expect(status(page)).toContainText(words);
        await expect(field(page)).toHaveAttribute('aria-invalid', 'true');
        await expect(field(page)).toHaveAccessibleDescription(words);
        await expect(field(page)).toHaveAccessibleDescription(/What to do/);
        await expect(field(page)).toHaveValue(input);
        await expect(note(page)).toBeHidden();
        await noSidewaysScroll(page);
      });
    await axe(page);
  });

  test('every kind of problem has its words', () => {
    const problems = Object.values(
      (json('content/text/en/errors.json') as { read: Record<string, { next: string }> }).read,
    );
    const schema = readFileSync('public/schema/reading.json', 'utf8');
    const codes = new Set(
      Object.keys((json('content/text/en/errors.json') as { read: object }).read),
    );
    expect(problems.length).toBeGreaterThan(REFUSED.length - 1);
    for (const code of codes) expect(schema).toContain(`"${code}"`);
    for (const { next } of problems) expect(next).not.toBe('');
  });
});
