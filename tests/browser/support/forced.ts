// What is left of a page where the reader's system sets all colours (forced colours).
import { expect, type Locator, type Page } from '@playwright/test';

/** Controls that must be seen to be controls (WCAG 1.4.11). Native ticks and sliders draw themselves. */
const CONTROLS =
  'button:enabled, .button, .answers a, .calls a, .danger-list > summary, select, textarea, input:not([type=checkbox], [type=radio], [type=range], [type=file])';
/** Pictures with colours of their own, which browsers leave alone. */
const PICTURES = '.drawing svg, .firm img, .bar-of-share, .curve svg';
/** Share of a line drawing's pixels that its lines take at the least; ours take 2.5 % and more. */
const LEAST_INK = 0.015;

/** Brightness of each pixel: WCAG's relative luminance. */
async function brightness(page: Page, png: Buffer): Promise<Float32Array> {
  return page.evaluate(async (picture) => {
    const image = new Image();
    image.src = `data:image/png;base64,${picture}`;
    await image.decode();
    const context = new OffscreenCanvas(image.width, image.height).getContext('2d');
    if (!context) throw new Error('no canvas');
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    const linear = (value = 0) =>
      value <= 10 ? value / 3294.6 : ((value / 255 + 0.055) / 1.055) ** 2.4;
    // Each of the 256 steps once: pictures have a hundred thousand pixels.
    const steps = Float32Array.from({ length: 256 }, (_, value) => linear(value));
    const light = (byte = 0) => steps[byte] ?? 0;
    return Float32Array.from(
      { length: data.length / 4 },
      (_, at) =>
        0.2126 * light(data[4 * at]) +
        0.7152 * light(data[4 * at + 1]) +
        0.0722 * light(data[4 * at + 2]),
    );
  }, png.toString('base64'));
}

/** The same of a colour's three numbers. */
function luminance([red = 0, green = 0, blue = 0]: readonly number[]): number {
  const linear = (value: number) =>
    value <= 10 ? value / 3294.6 : ((value / 255 + 0.055) / 1.055) ** 2.4;
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

/** Contrast of two brightnesses (WCAG 2.2). */
const contrast = (a: number, b: number) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);

/** The share of an element's pixels that stand out 3:1 from its corner (WCAG 1.4.11). */
export async function inkOf(element: Locator): Promise<number> {
  const pixels = await brightness(element.page(), await element.screenshot({ scale: 'css' }));
  const [ground = 0] = pixels;
  return pixels.filter((pixel) => contrast(pixel, ground) >= 3).length / pixels.length;
}

/** Asserts that the focus changes pixels around an element by 3:1, as many as a ring 2 px thick has (2.4.13). */
export async function ringSeen(element: Locator): Promise<void> {
  const page = element.page();
  await element.evaluate((one) => one.scrollIntoView({ block: 'center' }));
  const box = await element.boundingBox();
  if (!box) throw new Error('no box');
  const clip = { x: box.x - 7, y: box.y - 7, width: box.width + 14, height: box.height + 14 };
  const look = async () => brightness(page, await page.screenshot({ clip, scale: 'css' }));
  await element.blur();
  const before = await look();
  // A key first: rings are for those who use keys.
  await page.keyboard.press('Shift');
  await element.focus();
  const after = await look();
  const changed = after.filter((pixel, at) => contrast(pixel, before[at] ?? pixel) >= 3).length;
  expect(changed, 'pixels a ring 2 px thick has').toBeGreaterThan(4 * (box.width + box.height));
}

/** Texts that do not stand out from what they are written on (WCAG 1.4.3), in words. */
export async function unreadable(page: Page): Promise<string[]> {
  const texts = await page.evaluate(() => {
    const colour = (text: string) => (text.match(/[\d.]+/g) ?? []).map(Number);
    return [...document.querySelectorAll('body *')]
      .filter((element) => element.checkVisibility() && !element.matches('svg *, :disabled'))
      .filter((element) =>
        [...element.childNodes].some(
          ({ nodeType, textContent }) => nodeType === Node.TEXT_NODE && textContent?.trim() !== '',
        ),
      )
      .map((element) => {
        let under: Element | null = element;
        let ground = [0, 0, 0, 0];
        while (under && ground[3] === 0) {
          ground = colour(getComputedStyle(under).backgroundColor);
          under = under.parentElement;
        }
        // Where nothing is painted the page's own ground is seen.
        const probe = document.body.appendChild(document.createElement('i'));
        probe.style.color = 'Canvas';
        if (ground[3] === 0) ground = colour(getComputedStyle(probe).color);
        probe.remove();
        const { localName, textContent } = element;
        const words = `${localName} ${textContent.trim().slice(0, 40)}`;
        return { words, ground, ink: colour(getComputedStyle(element).color) };
      });
  });
  expect(texts.length, 'texts').toBeGreaterThan(0);
  return texts
    .filter(({ ground, ink }) => contrast(luminance(ground), luminance(ink)) < 4.5)
    .map(({ words }) => `unreadable: ${words}`);
}

/** Controls without a border that stands out 3:1 from the page, in words. */
export async function borderless(page: Page): Promise<string[]> {
  const { seen, faults } = await page.locator(CONTROLS).evaluateAll((controls) => {
    const probe = document.body.appendChild(document.createElement('i'));
    const rgb = (colour: string) => {
      probe.style.color = colour;
      const [red = 0, green = 0, blue = 0, alpha = 1] = (
        getComputedStyle(probe).color.match(/[\d.]+/g) ?? []
      ).map(Number);
      return { light: [red, green, blue], alpha };
    };
    const bright = (values: number[]) =>
      values
        .map((value) => (value <= 10 ? value / 3294.6 : ((value / 255 + 0.055) / 1.055) ** 2.4))
        .reduce((sum, value, at) => sum + value * ([0.2126, 0.7152, 0.0722][at] ?? 0), 0.05);
    const ground = bright(rgb('Canvas').light);
    probe.style.forcedColorAdjust = 'none';
    const stands = (colour: string) => {
      const { light, alpha } = rgb(colour);
      const own = bright(light);
      return alpha > 0.5 && Math.max(own, ground) / Math.min(own, ground) >= 3;
    };
    const shown = controls.filter(
      (control) => control.checkVisibility() && control.getBoundingClientRect().right > 0,
    );
    const bare = shown.filter((control) => {
      const style = getComputedStyle(control);
      return !['Top', 'Right', 'Bottom', 'Left'].every((side) => {
        const of = (part: string) => style.getPropertyValue(`border-${side.toLowerCase()}-${part}`);
        return of('style') !== 'none' && parseFloat(of('width')) >= 1 && stands(of('color'));
      });
    });
    probe.remove();
    return {
      seen: shown.length,
      faults: bare.map(
        (control) =>
          `no border: ${control.localName}.${control.getAttribute('class') ?? ''} ${control.textContent.trim().slice(0, 40)}`,
      ),
    };
  });
  expect(seen, 'controls').toBeGreaterThan(0);
  return faults;
}

/** Drawings whose lines are lost, in words. */
export async function lostDrawings(page: Page): Promise<string[]> {
  const pictures = await page.locator(PICTURES).filter({ visible: true }).all();
  expect(pictures.length, 'drawings').toBeGreaterThan(0);
  const lost: string[] = [];
  for (const picture of pictures.slice(0, 6)) {
    const ink = await inkOf(picture);
    if (ink < LEAST_INK) lost.push(`${(await picture.getAttribute('class')) ?? ''} ${String(ink)}`);
  }
  return lost;
}
