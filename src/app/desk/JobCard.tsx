import { Show } from 'solid-js';
import { Key, KeyButton } from './Key.tsx';
import { letters } from './keys.ts';
import { callerMost } from '../../visit/job.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps, Made } from './state.ts';

const said = { never: 'desk:job.never', stale: 'job:stale', same: 'job:copied' } as const;

/** The job as text and as data, to paste into whatever the firm keeps jobs in. */
export function JobCard(props: DeskProps & Pick<Made, 'outcome'>) {
  const t = sayer(props);
  return (
    <Show when={props.outcome.job() !== undefined}>
      <section class="panel job">
        <h2>{t('desk:job.title')}</h2>
        <p class="field">
          <label for="desk-clerk">{t('job:lines.clerk')}</label>
          <input
            id="desk-clerk"
            type="text"
            autocomplete="off"
            spellcheck={false}
            maxlength={callerMost.name}
            value={props.desk.caller.clerk()}
            onInput={({ currentTarget }) => props.desk.caller.setClerk(currentTarget.value)}
          />
        </p>
        <label for="desk-job">{t('desk:job.label')}</label>
        <textarea id="desk-job" readonly rows="12" value={props.outcome.text()} />
        <p classList={{ strong: props.outcome.copied() === 'stale' }} role="status">
          {t(said[props.outcome.copied()])}
        </p>
        <div class="ways">
          <button type="button" onClick={() => void props.outcome.copyJob('text')}>
            <Key of={letters.job} /> {t('desk:job.copy')}
          </button>
          <KeyButton
            of={letters.also}
            says={t('desk:keys.also')}
            onClick={() => {
              const code = props.outcome.code();
              if (code) props.desk.another(code);
            }}
          />
          <KeyButton
            of={letters.json}
            says={t('desk:job.copyJson')}
            onClick={() => void props.outcome.copyJob('json')}
          />
        </div>
        <label for="desk-json">{t('desk:job.json')}</label>
        <textarea id="desk-json" class="json" readonly rows="4" value={props.outcome.json()} />
        <p>
          <a href="../schema/job.json">{t('desk:job.schema')}</a>
        </p>
      </section>
    </Show>
  );
}
