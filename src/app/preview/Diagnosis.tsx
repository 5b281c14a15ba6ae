import { createMemo, Show, type JSX } from 'solid-js';
import { evidenceOf, seenFrom } from '../../diagnosis/evidence.ts';
import type { Model } from '../../diagnosis/types.ts';
import type { BookGuide } from '../../note/library.ts';
import type { Note, NoteCode } from '../../note/types.ts';
import { Faults } from './Faults.tsx';
import { Load } from './Load.tsx';
import { Plan } from './Plan.tsx';
import { guideName } from '../shared/content-words.ts';
import { forGuide } from '../shared/staff-words.ts';
import { endOf, guideOf } from '../../visit/sides.ts';
import { Later } from '../visits/Later.tsx';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import { createVisit } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly guide: BookGuide;
  readonly note: Note;
  /** The note's own; another code's is another part. */
  readonly code: NoteCode;
}

/** The guide the journey ended in: its faults are ranked. */
function lastOf({ guide, note }: Pick<Props, 'guide' | 'note'>): string {
  return guideOf(guide, endOf(guide, note.journey));
}

/** What the note makes likely, and how to find it: faults, checks, parts. */
export function Diagnosis(props: Props): JSX.Element {
  const t = sayer(props);
  const model = () => props.page.models[lastOf(props)];
  return (
    <Show
      when={model()}
      fallback={
        <section class="ranking">
          <h2>{t('preview:ranking.title')}</h2>
          <p class="quiet">{t('preview:ranking.none')}</p>
        </section>
      }
      keyed
    >
      {(found) => <Visited {...props} model={found} />}
    </Show>
  );
}

function Visited(props: Props & { readonly model: Model }): JSX.Element {
  // Made once: the parts below share it, and a new code makes a new one of us.
  // eslint-disable-next-line solid/reactivity -- what it reads does not change under it
  const { model, guide, note, code } = props;
  const last = lastOf({ guide, note });
  const evidence = evidenceOf(guide, note.journey, note.details);
  const visit = createVisit(model, seenFrom(last, guide.id, evidence), code);
  const page = createMemo(() => ({ ...props.page, words: forGuide(props.page.words, last) }));
  return (
    <>
      <Show when={last !== guide.id}>
        <p class="card crossed">
          {page().words.t('preview:ranking.crossed', {
            first: guideName(page().words, guide.id),
            last: guideName(page().words, last),
          })}
        </p>
      </Show>
      <Faults page={page()} guide={last} visit={visit} />
      <Plan page={page()} visit={visit} />
      <Load page={page()} visit={visit} />
      <Later
        class="record-fold"
        title={page().words.t('visits:record.title')}
        failed={page().words.t('visits:failed')}
        content={() =>
          import('../visits/Record.tsx').then(({ RecordVisit }) => () => (
            <RecordVisit page={page()} visit={visit} code={code} />
          ))
        }
      />
    </>
  );
}
