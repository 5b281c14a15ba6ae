import { languages } from '../content/load.ts';
import { DATA_FOLDER, dataFiles } from '../site/data/files.ts';

/** The parts of pages that are loaded on demand. */
export function getStaticPaths() {
  return languages().flatMap((language) =>
    dataFiles(language).map(({ name, json }) => ({
      params: { path: `${DATA_FOLDER}/${name}` },
      props: { json },
    })),
  );
}

export function GET({ props: { json } }: { props: { json: string } }): Response {
  return new Response(json);
}
