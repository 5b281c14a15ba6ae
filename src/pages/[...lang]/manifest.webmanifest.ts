import type { APIRoute } from 'astro';
import { languageParams } from '../../site/addresses.ts';
import { firm, languageOf, localeOf, mainLanguage } from '../../content/load.ts';
import { iconFile, icons } from '../../site/icon.ts';
import { token } from '../../site/tokens.ts';
import { words } from '../../site/words.ts';

export const getStaticPaths = languageParams;

/** The web app manifest of a language, at the top of its pages: addresses are relative to it. */
export const GET: APIRoute<{ language: string }> = ({ props: { language } }) => {
  const { t } = words(language);
  const up = language === mainLanguage() ? './' : '../';
  const manifest = {
    start_url: './',
    scope: './',
    name: firm().name,
    short_name: firm()['short-name'] ?? firm().name,
    description: t('site:home.title'),
    lang: localeOf(language),
    dir: languageOf(language).direction,
    display: 'standalone',
    background_color: token('paper'),
    theme_color: token('paper'),
    icons: icons.map((icon) => ({
      src: up + iconFile(icon),
      sizes: `${String(icon.size)}x${String(icon.size)}`,
      type: 'image/png',
      purpose: icon.purpose,
    })),
  };
  return new Response(JSON.stringify(manifest), {
    headers: { 'Content-Type': 'application/manifest+json' },
  });
};
