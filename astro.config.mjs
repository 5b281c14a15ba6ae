import solid from '@astrojs/solid-js';
import { defineConfig } from 'astro/config';
import { liveContent } from './.config/live-content.mjs';
import { contentGates } from './src/site/build/content-gates.ts';
import { finishBuild } from './src/site/build/finish-build.ts';
import { style } from './src/site/build/style.ts';
import { trustedTemplates } from './src/site/build/trusted-templates.ts';

const PAGE_PARTS =
  /src\/(?:guide\/ids|address\/(?:grammar|journey-text|timer)|offline\/regist(?:er|ration)|journey\/(?:heat|wait)|app\/question\/saved|site\/parts\/Layout\.astro\?.+|app\/shared\/(?:aloud|languages|replace-hash|skip|storage|stored-journey))\.ts$/;

/**
 * The notices that the licences of what browsers load ask for: minified files lose them. By a plugin,
 * because Astro passes only some settings on to the environment that builds for browsers.
 */
const licences = {
  name: 'licences',
  /** @param {string} name */
  configEnvironment: (name) =>
    name === 'client' ? { build: { license: { fileName: 'licences.txt' } } } : undefined,
};

export default defineConfig({
  output: 'static',
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'never' },
  devToolbar: { enabled: false },
  compressHTML: true,
  integrations: [contentGates(), solid(), finishBuild()],
  vite: {
    plugins: [trustedTemplates(), style(), licences, liveContent()],
    build: {
      // Nothing inline: the policy allows only files of our own.
      assetsInlineLimit: 0,
    },
    environments: {
      client: {
        build: {
          rolldownOptions: {
            output: {
              // What question pages share and a wait counts by, as one file: many small ones pack badly.
              // With the script of all pages in it, which else only loaded it, a round trip later.
              codeSplitting: { groups: [{ name: 'page', test: PAGE_PARTS }] },
            },
          },
        },
      },
    },
    experimental: {
      // Scripts name the parts they load on demand from their own place: the site lives in any folder.
      renderBuiltUrl: () => ({ relative: true }),
    },
  },
});
