// What the specs of the technician's page share: codes to enter, and where things stand.
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import type { Note, NoteCode } from '../../../src/note/types.ts';
import { writeCode } from '../../../src/note/write.ts';
import { codebooks } from './codebooks.ts';

export const json = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));
export { codebooks };

const pairs = (text: string) =>
  text.split(' ').map((pair) => {
    const [at, answer] = pair.split('.');
    return { at, answer };
  });
export const written = (journey: string, more: Partial<Note> = {}): NoteCode => {
  const note = {
    // An old code: all of them must be read for good.
    release: 1,
    guide: 'door-locked',
    journey: pairs(journey),
    day: 3,
    details: {},
    error: '',
    ...more,
  } as unknown as Note;
  const code = writeCode(note, codebooks);
  if (!code.ok) throw new Error(JSON.stringify(code.error));
  return code.value;
};

export const CODE = written(
  'danger.none doing.ended display.lock since.over-4 fan.quiet near.cool inside.nothing forced.yes',
);
export const plain = CODE.replaceAll('-', '');
export const other = (at: number, step = 1): string => {
  const symbols = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
  return symbols.charAt((symbols.indexOf(plain.charAt(at)) + step) % 32);
};
/** The code with other text in place of some characters. */
export const put = (at: number, text: string, length = text.length): string =>
  plain.slice(0, at) + text + plain.slice(at + length);

export const field = (page: Page): Locator => page.getByLabel('Note code');
export const status = (page: Page): Locator => page.locator('#code-status');
export const note = (page: Page): Locator =>
  page.getByRole('article', { name: 'What the code says' });
export const open = async (page: Page, hash = ''): Promise<void> => {
  await page.goto(`preview/${hash}`);
  await expect(status(page).first()).toBeAttached();
};
export const enter = async (page: Page, text: string): Promise<void> => {
  const another = page.getByRole('button', { name: 'Another code' });
  if (await another.isVisible()) await another.click();
  await field(page).fill(text);
  // By Enter or by the button, which folds away as soon as the code is read.
  await page.locator('form.reader').evaluate((form: HTMLFormElement) => form.requestSubmit());
};
