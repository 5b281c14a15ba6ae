import type about from '../../content/text/en/about.json';
import type bench from '../../content/text/en/bench.json';
import type care from '../../content/text/en/care.json';
import type desk from '../../content/text/en/desk.json';
import type diagnosis from '../../content/text/en/diagnosis.json';
import type errors from '../../content/text/en/errors.json';
import type fetching from '../../content/text/en/fetching.json';
import type guides from '../../content/text/en/guides.json';
import type note from '../../content/text/en/note.json';
import type offline from '../../content/text/en/offline.json';
import type preview from '../../content/text/en/preview.json';
import type round from '../../content/text/en/round.json';
import type site from '../../content/text/en/site.json';
import type visits from '../../content/text/en/visits.json';

/** English is the source: a key it does not have is a compile error. */
declare module 'i18next' {
  interface CustomTypeOptions {
    defaultNS: 'site';
    returnObjects: true;
    resources: {
      site: typeof site;
      about: typeof about;
      bench: typeof bench;
      care: typeof care;
      desk: typeof desk;
      diagnosis: typeof diagnosis;
      errors: typeof errors;
      fetching: typeof fetching;
      guides: typeof guides;
      note: typeof note;
      offline: typeof offline;
      preview: typeof preview;
      round: typeof round;
      visits: typeof visits;
    };
  }
}
