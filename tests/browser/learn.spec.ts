// The office's page: technicians' files in, what would change in words and a plot, new tables out.
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { logOf } from '../unit/diagnosis/support/logs.ts';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { noSidewaysScroll } from './support/layout.ts';

const file = (name: string, visits: unknown, more: object = {}) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(
    JSON.stringify({
      ...{ format: 'hobnote-visits', version: 1, guide: 'door-locked', visits },
      ...more,
    }),
  ),
});

test('files of several technicians: said in words, plotted, and written as tables', async ({
  page,
}) => {
  await page.goto('learn/');
  const files = page.locator('#learn input[type=file]');
  await expect(page.getByText('Add visit files')).toBeVisible();
  await axe(page);
  // A newer form is refused by name, and few visits teach nothing.
  const few = [{ answers: { doing: 'ended' }, fault: 'other', parts: [], minutes: 30 }];
  await files.setInputFiles([
    file('new.json', [], { version: 99 }),
    file('few.json', few, { version: 2 }),
  ]);
  await expect(page.getByRole('listitem').filter({ hasText: 'new.json' })).toContainText(
    'version 99',
  );
  await expect(page.getByRole('listitem').filter({ hasText: 'few.json' })).toContainText('1 visit');
  await expect(page.getByText(/^Too few/)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Save new tables' })).toBeHidden();

  await files.setInputFiles(file('year.json', logOf(500, 4, 3, 1)));
  await expect(page.getByRole('heading', { name: '501 visits' })).toBeVisible();
  await expect(page.getByText(/^The new figures predict clearly better/)).toBeVisible();
  await expect(page.locator('.reliability circle').first()).toBeVisible();
  await page.locator('.changes summary').first().click();
  await expect(page.locator('.changes li').first()).toContainText('→');
  await axe(page);
  await noSidewaysScroll(page);
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save new tables' }).click();
  const download = await coming;
  expect(download.suggestedFilename()).toBe('faults.yaml');
  const path = await download.path();
  const { faults } = parse(readFileSync(path, 'utf8')) as { faults: object };
  expect(Object.keys(faults).length).toBeGreaterThan(10);
});
