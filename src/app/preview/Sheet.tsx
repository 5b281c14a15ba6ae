import { For, Show, type JSX } from 'solid-js';
import { qrPath } from '../note/qr.ts';
import { stepWords } from '../shared/content-words.ts';
import { previewLink } from '../shared/job-text.ts';
import { name, names, resultName } from '../shared/staff-words.ts';
import { sayer } from '../shared/words.ts';
import { Pairs } from './Pairs.tsx';
import { asksModel, loaded, needed } from './Load.tsx';
import { flagLines, knownFacts, outcomeWords, type VisitProps } from './told.ts';
import { minutes } from './facts.ts';
import { odds } from './odds.ts';
import { likely } from './Faults.tsx';
import type { DiagnosisState } from './visit.ts';

/** As many as a page holds. */
const MOST_CHECKS = 5;
const MOST_FAULTS = 3;
/** Lines to write on. */
const blanks = ['name', 'phone', 'address', 'time', 'model', 'serial'] as const;

/** The visit on one sheet of paper: what to know, what to load, boxes to tick, lines to write on. */
export function Sheet(props: VisitProps): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  // eslint-disable-next-line solid/reactivity -- another note is another sheet
  const { reading, view } = props;
  const { code, note } = reading;
  const { guide, steps, urgency, heldBy } = view;
  const drives = urgency !== 'emergency' && urgency !== 'none';
  const qr = qrPath(previewLink(code));
  return (
    <section class="sheet" aria-label={t('preview:sheet.title')}>
      <header>
        <div>
          <p class="code">{code}</p>
          <p class="urgency">{t(`preview:outcome.urgency.${urgency}`)}</p>
          <p>
            {t(`preview:outcome.${props.view.state}`)}: {outcomeWords(words(), props.view)}
          </p>
          <Show when={heldBy}>{(who) => <p class="strong">{t(`preview:held.${who()}`)}</p>}</Show>
        </div>
        <svg viewBox={`0 0 ${qr.size} ${qr.size}`} shape-rendering="crispEdges" aria-hidden="true">
          <path d={qr.path} />
        </svg>
      </header>
      <Pairs
        class="blanks"
        rows={blanks.map((blank) => [t(`job:lines.${blank}`), props.extras.caller[blank]])}
      />
      <ul class="warned">
        <For each={flagLines(words(), props.view)}>{(line) => <li>{line}</li>}</For>
      </ul>
      <p>
        {[
          note.error ? `${t('preview:error.title')}: ${note.error}` : t('preview:error.none'),
          ...knownFacts(props)
            .filter(({ id }) => !blanks.some((blank) => blank === id))
            .map(({ label, text }) => `${label} ${text}`),
        ].join(' · ')}
      </p>
      <Show when={drives && props.visit}>{(visit) => <Work {...props} visit={visit()} />}</Show>
      <h2>{t('preview:answers.title', { count: steps.length })}</h2>
      <p class="told">
        {steps.map((step) => stepWords(words(), guide, step).join(': ')).join(' · ')}
      </p>
      <Pairs
        class="blanks"
        rows={(['found', 'used', 'spent'] as const).map((blank) => [
          t(`preview:sheet.${blank}`),
          '',
        ])}
      />
    </section>
  );
}

/** Faults, load and checks, each with its box. */
function Work(props: VisitProps & { readonly visit: DiagnosisState }): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const checks = () =>
    props.visit
      .plan()
      .best.steps.slice(0, MOST_CHECKS)
      .flatMap((step) => {
        const check = props.visit.model.checks.find(({ id }) => id === step.check);
        return check ? [{ check, step }] : [];
      });
  return (
    <>
      <h2>{t('preview:load.title')}</h2>
      <ul class="boxes">
        <For each={loaded(props.visit)} fallback={<li>{t('preview:load.noParts')}</li>}>
          {({ id }) => <li>{name(words(), 'parts', id)}</li>}
        </For>
        <Show when={asksModel(props.visit, props.extras.caller.model)}>
          <li>{t('preview:load.callModel')}</li>
        </Show>
      </ul>
      <p class="told">{names(words(), 'tools', needed(props.visit, 'tools'))}</p>
      <h2>{t('preview:ranking.title')}</h2>
      <p>
        {likely(props.visit)
          .slice(0, MOST_FAULTS)
          .map(({ fault, share }) => `${name(words(), 'faults', fault)}, ${odds(words(), share)}`)
          .join(' · ')}
      </p>
      <h2>{t('preview:plan.title')}</h2>
      <p class="told">{words().list('diagnosis:everyCheck').join(' ')}</p>
      <ol>
        <For each={checks()}>
          {({ check, step }) => (
            <li>
              <strong>{name(words(), 'checks', check.id)}</strong>, {minutes(words(), step.minutes)}
              <ul class="boxes">
                <For each={check.results}>
                  {({ id }) => <li>{resultName(words(), check.id, id)}</li>}
                </For>
              </ul>
            </li>
          )}
        </For>
      </ol>
    </>
  );
}
