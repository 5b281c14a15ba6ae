import solid from '@astrojs/solid-js';
import { defineConfig } from 'astro/config';
import { finishBuild } from './.config/finish-build.mjs';
import { shippedLicences } from './.config/shipped-licences.mjs';
import { trustedTemplates } from './.config/trusted-templates.mjs';

export default defineConfig({
  output: 'static',
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'never' },
  devToolbar: { enabled: false },
  compressHTML: true,
  integrations: [solid(), finishBuild()],
  vite: {
    plugins: [trustedTemplates(), shippedLicences()],
    build: {
      // Nothing inline: the policy allows only files of our own.
      assetsInlineLimit: 0,
    },
    experimental: {
      // Scripts name the parts they load on demand from their own place: the site lives in any folder.
      renderBuiltUrl: () => ({ relative: true }),
    },
  },
});
