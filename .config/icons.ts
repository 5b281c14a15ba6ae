// Draws the app icons anew from public/icon.svg: node .config/icons.ts
import { readFile, writeFile } from 'node:fs/promises';
import { chromium } from '@playwright/test';
import { CHROMIUM_FLAGS, chromium as program } from './browsers.ts';

/** The paper of the light theme. */
const PAPER = '#fbf6ee';

/**
 * A maskable icon is cut to any shape: what matters lies in the middle circle of 40 % radius
 * (W3C Web App Manifest, "icon masks"), here a square of 54 %.
 */
const ICONS = [
  { name: 'any-192', size: 192, part: 0.92, paper: 'transparent' },
  { name: 'any-512', size: 512, part: 0.92, paper: 'transparent' },
  { name: 'maskable-512', size: 512, part: 0.54, paper: PAPER },
];

const drawing = await readFile('public/icon.svg', 'utf8');
const browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
for (const { name, size, part, paper } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(
    `<style>body{margin:0;height:100vh;display:grid;place-content:center;background:${paper}}
     svg{width:${part * size}px}</style>${drawing}`,
  );
  await writeFile(`public/icon-${name}.png`, await page.screenshot({ omitBackground: true }));
  await page.close();
}
await browser.close();
