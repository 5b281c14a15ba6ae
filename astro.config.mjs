import solid from '@astrojs/solid-js';
import { defineConfig } from 'astro/config';
import { finishBuild } from './.config/finish-build.mjs';

export default defineConfig({
  output: 'static',
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'never' },
  devToolbar: { enabled: false },
  compressHTML: true,
  integrations: [solid(), finishBuild()],
  vite: {
    build: {
      // Nothing inline: the policy allows only files of our own.
      assetsInlineLimit: 0,
      modulePreload: false,
    },
  },
});
