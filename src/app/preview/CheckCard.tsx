import { For, Show, createSignal, type JSX } from 'solid-js';
import { openingFor, type PlanStep } from '../../diagnosis/plan.ts';
import type { Check } from '../../diagnosis/types.ts';
import { Results } from './Results.tsx';
import { checkSteps, name, names } from '../shared/staff-words.ts';
import { minutes, percent } from './facts.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';
import type { DiagnosisState } from './visit.ts';

interface Props {
  readonly page: Page;
  readonly visit: DiagnosisState;
  readonly check: Check;
  /** Its place in the order; none for a check the order does not come to. */
  readonly step: PlanStep | undefined;
  onResult(result: string): void;
}

/** One check: in a line what it takes, opened how to make it and what its results say. */
export function CheckCard(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const [open, setOpen] = createSignal(false);
  const title = () => name(words(), 'checks', props.check.id);
  return (
    <details class="card check" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span class="title">{title()}</span>{' '}
        <span class="quiet">
          <Show
            when={props.step}
            fallback={t('preview:plan.alone', { minutes: minutes(words(), props.check.minutes) })}
          >
            {(step) => <Takes {...props} step={step()} />}
          </Show>
        </span>
      </summary>
      <Show when={open()}>
        <CautionBox {...props} />
        <h4>{t('preview:plan.how')}</h4>
        <ol>
          <For each={checkSteps(words(), props.check.id)}>{(line) => <li>{line}</li>}</For>
        </ol>
        <Show when={props.check.bench === 'sensor'}>
          <p>
            <a href="../bench/">{t('preview:plan.bench')}</a>
          </p>
        </Show>
        <Results {...props} />
        <Needs {...props} />
      </Show>
    </details>
  );
}

/** What it needs opened on a range like this. */
const opened = ({ visit, check }: Props) => openingFor(visit.model, visit.evidence())(check);

/** Minutes, what they open, and how often it comes to this. */
function Takes(props: Props & { readonly step: PlanStep }): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const opens = () => props.step.opens;
  return (
    <>
      {minutes(words(), props.step.minutes)}
      <Show when={opens().length > 0}>
        {t('preview:plan.opens', {
          minutes: minutes(words(), props.step.minutes - props.check.minutes),
          access: names(words(), 'access', opens()),
        })}
      </Show>
      <Show when={opens().length === 0 && opened(props).length > 0}>
        {t('preview:plan.shared')}
      </Show>
      <Show when={props.step.reached < 1} fallback=".">
        {t('preview:plan.reached', { share: percent(words(), props.step.reached) })}
      </Show>
    </>
  );
}

/** What holds for every check stands first on every one. */
function CautionBox(props: Props): JSX.Element {
  const words = () => props.page.words;
  /** Its own, and those of what it needs opened. */
  const cautions = () => [
    ...new Set([
      ...props.check.cautions,
      ...opened(props).flatMap(
        (id) => props.visit.model.access.find((one) => one.id === id)?.cautions ?? [],
      ),
    ]),
  ];
  return (
    <div class="care">
      <ul>
        <For each={words().list('diagnosis:everyCheck')}>{(line) => <li>{line}</li>}</For>
        <For each={cautions()}>{(caution) => <li>{name(words(), 'cautions', caution)}</li>}</For>
      </ul>
    </div>
  );
}

function Needs(props: Props): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const none = () => t('preview:plan.none');
  const rows = (): readonly (readonly [
    'reading' | 'access' | 'tools' | 'skills' | 'condemns',
    string,
  ])[] => [
    ['reading', words().t(`diagnosis:reading.${props.check.reading}`)],
    ['access', names(words(), 'access', opened(props)) || none()],
    ['tools', names(words(), 'tools', props.check.tools) || none()],
    ['skills', names(words(), 'skills', props.check.skills) || none()],
    [
      'condemns',
      props.check.condemns === undefined ? none() : name(words(), 'parts', props.check.condemns),
    ],
  ];
  return (
    <dl>
      <For each={rows()}>
        {([row, text]) => (
          <div>
            <dt>{t(`preview:plan.${row}`)}</dt>
            <dd>{text}</dd>
          </div>
        )}
      </For>
    </dl>
  );
}
