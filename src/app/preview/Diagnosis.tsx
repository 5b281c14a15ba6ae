import { Show, type JSX } from 'solid-js';
import type { Model } from '../../diagnosis/types.ts';
import type { NoteCode } from '../../note/types.ts';
import type { VisitView } from '../../visit/read-visit.ts';
import { AskFirst } from './AskFirst.tsx';
import { Faults } from './Faults.tsx';
import { PartsToBring } from './PartsToBring.tsx';
import { Plan } from './Plan.tsx';
import { guideName } from '../shared/content-words.ts';
import { LazyDetails } from '../visits/LazyDetails.tsx';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import { createVisit } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly view: VisitView;
  /** The note's own; another code's is another part. */
  readonly code: NoteCode;
  /** It came with the code in the long form. */
  readonly modelNumber: string | undefined;
}

/** What the note makes likely, and how to find it: faults, checks, parts. */
export function Diagnosis(props: Props): JSX.Element {
  const t = sayer(props);
  return (
    <Show
      when={props.view.model}
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
  const { model, view, code } = props;
  const { guide, last } = view;
  const visit = createVisit(model, view.evidence, code);
  return (
    <>
      <Show when={last !== guide.id}>
        <p class="card crossed">
          {props.page.words.t('preview:ranking.crossed', {
            first: guideName(props.page.words, guide.id),
            last: guideName(props.page.words, last),
          })}
        </p>
      </Show>
      <AskFirst page={props.page} visit={visit} />
      <Faults
        page={props.page}
        guides={[last, ...view.legs.map((leg) => leg.guide)]}
        visit={visit}
      />
      {/* Help comes before any repair. */}
      <Show when={view.urgency !== 'emergency'}>
        <Plan page={props.page} visit={visit} />
        <PartsToBring page={props.page} visit={visit} modelNumber={props.modelNumber} />
      </Show>
      <LazyDetails
        class="record-fold"
        title={props.page.words.t('visits:record.title')}
        failed={props.page.words.t('visits:failed')}
        content={() =>
          import('../visits/Record.tsx').then(({ RecordVisit }) => () => (
            <RecordVisit page={props.page} visit={visit} code={code} />
          ))
        }
      />
    </>
  );
}
