import type { APIRoute } from 'astro';
import { languageParams } from '../../site/addresses.ts';
import { languageOf, mainLanguage } from '../../content/load.ts';
import { words } from '../../site/words.ts';

export const getStaticPaths = languageParams;

/** The web app manifest of a language, at the top of its pages: addresses are relative to it. */
export const GET: APIRoute<{ language: string }> = ({ props: { language } }) => {
  const t = words(language);
  const up = language === mainLanguage() ? './' : '../';
  const icon = (size: number, purpose: string) => ({
    src: `${up}icon-${purpose}-${String(size)}.png`,
    sizes: `${String(size)}x${String(size)}`,
    type: 'image/png',
    purpose,
  });
  const manifest = {
    start_url: './',
    scope: './',
    name: t('name'),
    short_name: t('name'),
    description: t('home.title'),
    lang: language,
    dir: languageOf(language).direction,
    display: 'standalone',
    // The paper of the light theme: `style/base.css`.
    background_color: '#fbf6ee',
    theme_color: '#fbf6ee',
    icons: [icon(192, 'any'), icon(512, 'any'), icon(512, 'maskable')],
  };
  return new Response(JSON.stringify(manifest), {
    headers: { 'Content-Type': 'application/manifest+json' },
  });
};
