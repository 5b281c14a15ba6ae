import { For, Show, createResource, createSignal, onCleanup, type JSX } from 'solid-js';
import { MOST_MINUTES, MOST_REMARK, NOTHING, OTHER } from '../../diagnosis/visits-schema.ts';
import { defined } from '../../defined.ts';
import { oneLine } from '../../visit/job.ts';
import { copy } from '../shared/Copy.tsx';
import { sayer } from '../shared/words.ts';
import { name, names } from '../shared/staff-words.ts';
import type { Page } from '../preview/page.ts';
import type { ProblemState } from '../preview/visit.ts';
import { asFile, recorded, type StoredVisit } from './stored.ts';
import { add, all, onChange, type StoreProblem } from './store.ts';
import { foundName, problemLines } from './words.ts';

/** After the visit: what it turned out to be and which parts were used, kept on this device. */
export function RecordVisit(props: {
  readonly page: Page;
  readonly visit: ProblemState;
  readonly code: string;
}): JSX.Element {
  const t = sayer(props);
  const words = () => props.page.words;
  const [fault, setFault] = createSignal('');
  const [parts, setParts] = createSignal<readonly string[]>([]);
  const [minutes, setMinutes] = createSignal('');
  const [remark, setRemark] = createSignal('');
  const [asked, setAsked] = createSignal(false);
  const [stored, { refetch }] = createResource(all);
  const [problem, setProblem] = createSignal<{ stored: StoredVisit; problem: StoreProblem }>();
  const [saved, setSaved] = createSignal(false);
  let choice: HTMLSelectElement | undefined;

  const listed = () => {
    const rest = props.visit.model.faults.find(({ unlisted }) => unlisted)?.id;
    return props.visit
      .ranking()
      .map(({ fault: id }) => id)
      .filter((id) => id !== rest);
  };
  const faultName = (id: string) => foundName(words(), id);
  const before = () => {
    const found = stored.latest;
    return found?.ok ? found.value.visits.find(({ code }) => code === props.code) : undefined;
  };
  onCleanup(onChange(() => void refetch()));

  const missing = () => asked() && fault() === '';
  const save = async () => {
    setAsked(true);
    setSaved(false);
    setProblem(undefined);
    if (fault() === '') {
      choice?.focus();
      return;
    }
    const { model, evidence } = props.visit;
    const of = { model, code: props.code, evidence: evidence() };
    const taken = Math.round(Number(minutes()));
    const found = {
      ...{ fault: fault(), parts: [...parts()] },
      ...defined({
        minutes: taken >= 1 && taken <= MOST_MINUTES ? taken : undefined,
        remark: oneLine(remark(), MOST_REMARK) || undefined,
      }),
    };
    const made = recorded(of, found, before());
    const done = await add([made]);
    if (done.ok) {
      setSaved(true);
      void refetch();
    } else setProblem({ stored: made, problem: done.error });
  };

  return (
    <form
      class="record"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <p>{t('visits:record.lead')}</p>
      <Show when={before()}>
        {(found) => (
          <p class="strong">
            {t('visits:record.before', {
              fault: faultName(found().visit.fault),
              parts: names(words(), 'parts', found().visit.parts) || t('preview:load.noParts'),
            })}
          </p>
        )}
      </Show>
      <label for="found">{t('visits:record.fault')}</label>
      <select
        id="found"
        ref={(element) => (choice = element)}
        aria-invalid={missing() ? 'true' : undefined}
        aria-describedby={missing() ? 'found-missing' : undefined}
        onChange={(event) => {
          setFault(event.currentTarget.value);
          setSaved(false);
        }}
      >
        <option value="">{t('visits:record.choose')}</option>
        {/* Likeliest first, as above. What is not listed has its own words here. */}
        <For each={listed()}>{(id) => <option value={id}>{faultName(id)}</option>}</For>
        <For each={[OTHER, NOTHING]}>{(id) => <option value={id}>{faultName(id)}</option>}</For>
      </select>
      <Show when={missing()}>
        <p class="trouble" id="found-missing">
          {t('visits:record.missing')}
        </p>
      </Show>
      <fieldset>
        <legend>{t('visits:record.parts')}</legend>
        <For each={props.visit.model.parts}>
          {({ id }) => (
            <label class="tick">
              <input
                type="checkbox"
                onChange={(event) => {
                  const on = event.currentTarget.checked;
                  setParts((old) => [...old.filter((one) => one !== id), ...(on ? [id] : [])]);
                  setSaved(false);
                }}
              />
              {name(words(), 'parts', id)}
            </label>
          )}
        </For>
      </fieldset>
      <p>
        <label for="taken">{t('visits:record.minutes')}</label>
        <input
          id="taken"
          type="number"
          inputmode="numeric"
          min="1"
          max={MOST_MINUTES}
          value={minutes()}
          onInput={({ currentTarget }) => {
            setMinutes(currentTarget.value);
            setSaved(false);
          }}
        />
      </p>
      <p>
        <label for="said">{t('visits:record.remark')}</label>
        <input
          id="said"
          autocomplete="off"
          maxlength={MOST_REMARK}
          aria-describedby="said-hint"
          value={remark()}
          onInput={({ currentTarget }) => {
            setRemark(currentTarget.value);
            setSaved(false);
          }}
        />
        <span class="quiet" id="said-hint">
          {t('visits:record.remarkHint')}
        </span>
      </p>
      <p>
        <button type="submit">{t(before() ? 'visits:record.again' : 'visits:record.save')}</button>
      </p>
      <p role="status">{saved() ? t('visits:record.saved') : ''}</p>
      <Show when={problem()}>
        {(told) => (
          <Unsaved
            page={props.page}
            problem={told().problem}
            text={asFile(told().stored.guide, [told().stored])}
          />
        )}
      </Show>
    </form>
  );
}

/** The device does not keep it: why, and the visit as a file's text to take elsewhere. */
function Unsaved(props: {
  readonly page: Page;
  readonly problem: StoreProblem;
  readonly text: string;
}): JSX.Element {
  const t = sayer(props);
  const [copied, setCopied] = createSignal<boolean>();
  let field: HTMLTextAreaElement | undefined;
  return (
    <div class="unsaved">
      <p role="alert">{problemLines(props.page.words, [props.problem]).join(' ')}</p>
      <label for="unsaved">{t('visits:record.text')}</label>
      <textarea
        id="unsaved"
        rows="6"
        readonly
        ref={(element) => (field = element)}
        value={props.text}
      />
      <button
        type="button"
        class="plain"
        onClick={() => void copy(props.text, field).then(setCopied)}
      >
        {t('visits:record.copy')}
      </button>
      <Show when={copied() !== undefined}>
        <p>{t(copied() ? 'visits:record.copied' : 'visits:record.notCopied')}</p>
      </Show>
    </div>
  );
}
