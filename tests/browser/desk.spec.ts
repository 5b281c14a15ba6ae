// The desk: a call from start to end, by keys alone and by touch, and everything that may go wrong.
import type { Page } from '@playwright/test';
import { jobSchema } from '../../src/cli/job-json.ts';
import { parseFragment } from '../../src/address/fragment.ts';
import { spell } from '../../src/note/spelling.ts';
import type { NoteCode } from '../../src/note/types.ts';
import { axe } from './support/axe.ts';
import { choose, Counted, HUM, openDesk, press, rows, say, status } from './support/desk.ts';
import { DESK, expect, test } from './support/fixtures.ts';
import { tabOrder } from './support/keyboard.ts';
import { noSidewaysScroll } from './support/layout.ts';
import { addressOf, codeFor, made, to } from './support/note.ts';

test.use(DESK);

const codeOn = (page: Page) => page.locator('.code-out .groups strong').allTextContents();
const part = (count: number) => HUM.slice(0, count);
const BAD = '<img src=x onerror=alert(1)><script>alert(2)</script>';

test.describe('by keys alone', () => {
  test('a whole call, from the danger question to the job', async ({ page, context }) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await openDesk(page);
    await expect(say(page)).toHaveText('Is any of this happening right now?');
    await axe(page);
    const keys = new Counted(page);
    await keys.answer(part(2));
    // A caution stands before the answers until it has been read out.
    await expect(page.locator('.care .word')).toHaveText('CAUTION');
    await axe(page);
    const before = page.url();
    await press(page, '2');
    await expect(status(page)).toHaveText('Read the caution aloud first. Then press Space.');
    expect(page.url()).toBe(before);
    await keys.answer(HUM.slice(2, 9));
    await keys.press('t', 'Space');
    await expect(page.locator('.faces')).toContainText(/Time left\s*(5:00|4:5\d)/);
    await axe(page);
    await keys.answer(HUM.slice(9));
    await expect(page.locator('.bar-call .urgency dd')).toHaveText('Soon');
    await expect(rows(page)).toHaveCount(12);
    expect(addressOf(page).journey).toEqual(HUM);
    // 12 answers, their cautions and a timer.
    expect(keys.presses / HUM.length).toBeLessThanOrEqual(3);
    console.log(`key presses: ${String(keys.presses)} for ${String(HUM.length)} answers`);

    await keys.press('Space', 'p');
    await keys.type('Ann Example');
    await press(page, 'Tab');
    await page.keyboard.type('555-0123');
    await press(page, 'Escape');
    await expect(say(page)).toBeFocused();
    await press(page, 'j');
    await expect(status(page)).toHaveText('Job text copied.');
    const text = await page.evaluate(() => navigator.clipboard.readText());
    const code = (await codeOn(page)).join('-');
    expect(text).toMatch(
      /^Job: SOON: .+\nOutcome: .+\nBecause: Lock after the reset: A hum that does not stop\nBreaker: stays off/,
    );
    expect(text).toMatch(/\nWhat to load: /);
    for (const line of [
      `Code: ${code} (not read back)`,
      'Name: Ann Example',
      'Time since the heat stopped: More than 4 hours ago',
    ])
      expect(text).toContain(line);
    expect(text).not.toContain('Cautions not marked');
    await press(page, 's');
    await expect(status(page)).toHaveText('JSON copied.');
    const job = jobSchema.parse(
      JSON.parse(await page.evaluate(() => navigator.clipboard.readText())),
    );
    expect(job).toMatchObject({
      code,
      urgency: 'soon',
      breakerStaysOff: true,
      outcome: { kind: 'stop', at: 'stop-hum', because: ['listen', 'hum-on'] },
      caller: { name: 'Ann Example', phone: '555-0123' },
      cautions: { unread: [] },
    });
    expect(job.answers).toEqual(HUM.map(({ at, answer }) => [at, answer]));
    expect(code).toBe(codeFor({ journey: HUM, details: {}, made: job.made }));
    await axe(page);
    await noSidewaysScroll(page);

    // The next call: asked once, then nothing is left.
    await press(page, 'n');
    await expect(page.getByRole('alert')).toContainText('End this call?');
    await press(page, 'Escape');
    await expect(rows(page)).toHaveCount(12);
    await press(page, 'n');
    await press(page, 'Enter');
    await expect(rows(page)).toHaveCount(0);
    for (const name of await page.getByLabel('Name', { exact: true }).all())
      await expect(name).toHaveValue('');
    expect(new URL(page.url()).hash).toBe('');
    await expect(say(page)).toHaveText(
      /^(?:Is any of this happening right now|What is wrong with the range)\?$/,
    );
  });

  test('an answer changed in the middle keeps the later ones that fit', async ({ page }) => {
    await openDesk(page, { journey: part(8) });
    const keys = new Counted(page);
    await keys.press('-');
    for (let back = 0; back < 5; back += 1) await press(page, 'ArrowLeft');
    await expect(say(page)).toHaveText('What does the display show?');
    await expect(page.locator('.choices .present')).toContainText('current answer');
    await axe(page);
    await press(page, '5');
    await expect(say(page)).toHaveText('What exactly does it show?');
    await expect(page.locator('.later')).toContainText('4 later answers are on hold');
    await keys.press('Space', 'e');
    await page.keyboard.type('F9 E1');
    await press(page, 'Escape');
    await press(page, '1');
    await expect(status(page)).toHaveText('3 later answers still fit.');
    await expect(rows(page)).toHaveCount(8);
    expect(addressOf(page)).toMatchObject({ error: 'F9 E1' });
    expect(addressOf(page).journey.at(-1)).toEqual({ at: 'try-door-cold', answer: 'stuck' });
    await press(page, 'Space');
    await press(page, '9');
    await expect(status(page)).toHaveText('There is no answer 9.');
    await press(page, '0');
    expect(addressOf(page).journey.at(-1)).toEqual({ at: 'panel-cold', answer: 'unsure' });
  });

  test('a code with a mistake is repaired, confirmed, and the call goes on from it', async ({
    page,
  }) => {
    const fragment = to('inside', { error: 'F9', details: { fuel: 'gas' } });
    const code = codeFor(fragment);
    await openDesk(page);
    await press(page, 'k');
    await page.keyboard.type(`${code.startsWith('Z') ? 'Y' : 'Z'}${code.slice(1)}`);
    await press(page, 'Enter');
    await expect(page.locator('.repair')).toContainText('Group 1, character 1');
    await expect(page.locator('.repair .changed')).toHaveText(/^[YZ]./);
    await axe(page);
    await press(page, 'Enter');
    await expect(status(page)).toContainText('answers loaded from the code.');
    await expect(page.locator('.kicker').first()).toContainText('Ask this again');
    await press(page, '-');
    await expect(say(page)).toHaveText('What was left in the oven?');
    expect(addressOf(page)).toMatchObject({
      journey: fragment.journey,
      error: 'F9',
      details: { fuel: 'gas' },
    });
    expect((await codeOn(page)).join('-')).toBe(code);
    // A code that cannot be read says why and keeps what was typed.
    await press(page, 'k');
    await page.keyboard.type('ABCD');
    await press(page, 'Enter');
    await expect(page.locator('#desk-code-problem')).toContainText('has 4 characters');
    await expect(page.locator('#desk-code')).toHaveValue('ABCD');
    await axe(page);
    await press(page, 'Escape');
    await expect(say(page)).toHaveText('What was left in the oven?');
  });

  test('a wrong character read back is caught and marked', async ({ page }) => {
    await openDesk(page, { journey: part(4), made });
    await press(page, '-');
    const code = (await codeOn(page)).join('-') as NoteCode;
    const wrong = code.charAt(5) === '7' ? '8' : '7';
    await press(page, 'c');
    await page.keyboard.type(code.slice(0, 5) + wrong + code.slice(6, 9));
    const said = page.locator('.back-said');
    await expect(said).toHaveText('1 difference. Read the marked group again.');
    await expect(page.locator('.compared .changed')).toHaveText(`${code.charAt(5)}${wrong}`);
    await expect(page.locator('.differences')).toContainText(
      `Group 2, character 1: the code has ${code.charAt(5)}, the caller read ${wrong}`,
    );
    await axe(page);
    await press(page, 'Control+a');
    await page.keyboard.type(spell(code).flat().join(' '));
    await expect(said).toHaveText('Right. All 16 characters match.');
    await expect(page.locator('#desk-job')).toHaveValue(/\(read back, correct\)/);
    await press(page, 'Escape');
    await press(page, '1');
    await expect(said).toHaveText(
      'The answers changed, and so did the code. Read out the new one.',
    );
    await expect(page.locator('#desk-job')).toHaveValue(/\(not read back\)/);
  });

  test('danger in mid-call leads out at once, the number first', async ({ page }) => {
    await openDesk(page, { journey: part(6) });
    await press(page, '-');
    await press(page, 'd');
    await press(page, '3');
    expect(addressOf(page).journey.at(-1)).toEqual({ at: 'controls', answer: 'gas' });
    await expect(page.locator('.end .kicker').first()).toHaveText('Emergency: say this first');
    await expect(page.locator('.end .call-note')).toContainText('First tell me your address');
    await expect(page.locator('.numbers li').first()).toContainText('911');
    await expect(page.locator('.bar-call .urgency dd')).toHaveText('Emergency');
    await axe(page);
    // The list in the page's head answers here too, and does not lead away.
    await press(page, 'ArrowLeft');
    await press(page, '1');
    await page.locator('.danger-list summary').click();
    await page.locator('.danger-list [data-exit="fire"]').click();
    await expect(say(page)).toHaveText('Stop. Fire or heavy smoke');
    expect(new URL(page.url()).pathname).toBe('/desk/');
  });

  test('single keys can be switched off, and never type into a field', async ({ page }) => {
    await openDesk(page);
    await page.getByLabel('Name', { exact: true }).fill('');
    await page.getByLabel('Name', { exact: true }).pressSequentially('d8-nx0');
    await expect(page.getByLabel('Name', { exact: true })).toHaveValue('d8-nx0');
    await expect(rows(page)).toHaveCount(0);
    await say(page).focus();
    await press(page, '?');
    await page.getByLabel('Shortcuts on').uncheck();
    await say(page).focus();
    await press(page, '-');
    await expect(rows(page)).toHaveCount(0);
    await page.getByLabel('Shortcuts on').check();
    await say(page).focus();
    await press(page, 'x');
    await press(page, 'Enter');
    await expect(page.getByLabel('Name', { exact: true })).toHaveValue('');
    await press(page, '-');
    await expect(rows(page)).toHaveCount(1);
    const stops = await tabOrder(page);
    expect(stops.filter(({ ring }) => !ring)).toEqual([]);
  });
});

test('a reload in mid-call keeps the answers, drops what is about the caller, and says so', async ({
  page,
}) => {
  await openDesk(page);
  await choose(page, 'None of these');
  await choose(page, 'More than 4 hours ago');
  for (const [label, text] of [
    ['Name', 'Ann Example'],
    ['Callback number', '555-0123'],
    ['Address', '1 Lantern Lane'],
    ['Model number', 'QX-77'],
    ['Preferred time', 'Friday'],
  ] as const)
    await page.getByLabel(label, { exact: true }).fill(text);
  await expect(page.locator('#desk-job')).toHaveValue(/Address: 1 Lantern Lane/);
  const stored = () =>
    page.evaluate(() =>
      JSON.stringify([{ ...localStorage }, { ...sessionStorage }, history.state, location.href]),
    );
  expect(await stored()).not.toMatch(/Ann|0123|Lantern|QX-77|Friday/);
  await page.reload();
  await expect(page.locator('.told')).toContainText('The answers are kept');
  await expect(page.locator('.told')).toContainText('the caller’s name, number, address');
  await expect(rows(page)).toHaveCount(2);
  for (const field of await page.locator('.caller input').all())
    await expect(field).toHaveValue('');
  await axe(page);
  await noSidewaysScroll(page);
  await page.getByRole('button', { name: 'Understood' }).click();
  await expect(page.locator('.told')).toHaveCount(0);
  await choose(page, 'None of these');
  await expect(say(page)).toHaveText('Do you feel heat, or hear a fan?');
});

test('hostile text is only ever text', async ({ page }) => {
  const turned = `\u202e${BAD}\u0007`;
  const hash = new URLSearchParams({
    j: 'danger.none~since.no-such~<b>.x',
    e: turned,
    m: BAD,
    r: BAD.repeat(9),
    d: 'fuel.gas~fuel.<',
  });
  await openDesk(page);
  await page.goto('about:blank');
  await page.goto(`/desk/#${hash.toString().replaceAll('+', '%20')}`);
  await expect(page.locator('.told')).toContainText('Part of the link is damaged');
  await expect(page.locator('.told')).toContainText('Some answers do not fit');
  await expect(page.getByLabel('Model number')).toHaveValue(BAD);
  // Model and remark are the caller's: they leave the address.
  const kept = parseFragment(new URL(page.url()).hash).fragment;
  expect([kept.model, kept.remark]).toEqual([undefined, undefined]);
  await page.getByLabel('Name', { exact: true }).fill(`${turned} x URGENCY: none`);
  const text = await page.locator('#desk-job').inputValue();
  expect(text).toContain(`Name: ${BAD} x URGENCY: none`);
  expect(text).not.toMatch(/\p{Cf}|(?!\n)\p{Cc}/u);
  await expect(page.locator('main img, main script[src="x"]')).toHaveCount(0);
  await noSidewaysScroll(page);
  await axe(page);
  await page.getByRole('button', { name: 'Caller has a code' }).click();
  await page.locator('#desk-code').fill(BAD);
  await page.getByRole('button', { name: 'Read code' }).click();
  await expect(page.locator('#desk-code-problem')).toContainText(
    'The character < after 0 characters',
  );
});
