import type { Page } from '@playwright/test';

/** Sets text as far apart as WCAG 1.4.12 says a page must bear. Style sheets made by script pass the policy. */
export async function spaceText(page: Page): Promise<void> {
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }
       p { margin-bottom: 2em !important }
       /* Rows far off are drawn when they come near: here all at once. */
       .visit { content-visibility: visible !important }`,
    );
    document.adoptedStyleSheets = [sheet];
  });
}

/** Texts that are cut off, stick out of their box, or lie over each other, in words. */
export async function spoiltTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const short = (text: string) => text.trim().replace(/\s+/g, ' ').slice(0, 40);
    const shown = [...document.querySelectorAll('body *')].filter(
      (element) =>
        element.checkVisibility() &&
        element.getBoundingClientRect().width > 1 &&
        !element.closest('svg') &&
        element.textContent.trim() !== '',
    );
    const cut = shown
      .filter((element) => {
        const { overflowX, overflowY, display } = getComputedStyle(element);
        const control = element.matches('button, .button, summary, .answers a, .calls a');
        const wide = element.scrollWidth > element.clientWidth + 1;
        const high = element.scrollHeight > element.clientHeight + 1;
        if (display === 'inline' || element.matches('textarea, select')) return false;
        const cuts = (way: string) => way === 'hidden' || way === 'clip';
        return (wide && (control || cuts(overflowX))) || (high && (control || cuts(overflowY)));
      })
      .map((element) => `cut: ${element.localName} ${short(element.textContent)}`);
    // A fifth off above and below: the box of a line is higher than its letters.
    const lines = shown.flatMap((element) =>
      [...element.childNodes]
        .filter((child) => child.nodeType === Node.TEXT_NODE && child.textContent?.trim() !== '')
        .flatMap((child) => {
          const range = document.createRange();
          range.selectNodeContents(child);
          return [...range.getClientRects()]
            .filter(({ width, height }) => width > 1 && height > 1)
            .map(({ left, right, top, bottom, height }) => ({
              child,
              text: short(child.textContent ?? ''),
              left,
              right,
              top: top + height / 5,
              bottom: bottom - height / 5,
            }));
        }),
    );
    const over = lines.flatMap((one, at) =>
      lines
        .slice(at + 1)
        .filter(
          (other) =>
            Math.min(one.right, other.right) - Math.max(one.left, other.left) > 1 &&
            Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 1,
        )
        .map((other) => `over each other: ${one.text} | ${other.text}`),
    );
    return [...cut, ...over];
  });
}

/** All text that is shown, line by line, figures left out: a clock may run. */
export async function shownText(page: Page): Promise<string> {
  const text = await page.evaluate(() => document.body.innerText);
  return text.replace(/\d+/g, '0').replace(/\s+/g, ' ');
}
