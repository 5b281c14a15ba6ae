import solid from '@astrojs/solid-js';
import { defineConfig } from 'astro/config';
import { finishBuild } from './.config/finish-build.mjs';
import { shippedLicences } from './.config/shipped-licences.mjs';
import { trustedTemplates } from './.config/trusted-templates.mjs';

const PAGE_PARTS =
  /src\/(?:guide\/ids|address\/journey-text|offline\/registration|journey\/(?:countdown|wait)|app\/shared\/(?:kept-journey|storage))\.ts$/;

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
    environments: {
      client: {
        build: {
          rolldownOptions: {
            output: {
              // What question pages share and a wait counts by, as one file: many small ones pack badly.
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
