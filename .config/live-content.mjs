import { fileURLToPath } from 'node:url';

const content = fileURLToPath(new URL('../content/', import.meta.url));

/**
 * `npm run dev` shows a changed sentence, graph or figure at once. What lies under `content/` is
 * read by `node:fs` and kept by the modules that read it, so nothing tells Vite of it: here every
 * module of the build is forgotten, and open pages are asked for anew. Content that is broken
 * throws while a page is made: the page then shows the error, and the next good save the page.
 *
 * @returns {import('vite').Plugin}
 */
export function liveContent() {
  return {
    name: 'live-content',
    apply: 'serve',
    configureServer(server) {
      server.watcher.add(content);
      server.watcher.on('all', (_event, path) => {
        if (!path.startsWith(content)) return;
        for (const environment of Object.values(server.environments)) {
          if (environment.name !== 'client') environment.moduleGraph.invalidateAll();
          environment.hot.send({ type: 'full-reload' });
        }
      });
    },
  };
}
