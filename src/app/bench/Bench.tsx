import { For, Show, createMemo, type JSX } from 'solid-js';
import type { Key } from '../shared/keys.ts';
import type { Words } from '../shared/words.ts';
import { Added } from './Added.tsx';
import { Curve } from './Curve.tsx';
import { Entry } from './Entry.tsx';
import { Finding } from './Finding.tsx';
import { sensors, type Entries } from './entries.ts';
import { judge } from './judge.ts';
import type { BenchState } from './state.ts';

const units = ['F', 'C'] as const;

/** The sensor bench: what is typed, kept in the address, and what it says. */
export function Bench(props: { readonly words: Words; readonly state: BenchState }): JSX.Element {
  const t: Words['t'] = (key, facts) => props.words.t(key, facts);
  const entries = () => props.state.entries();
  const put = (change: Partial<Entries>) => props.state.put(change);
  const judged = createMemo(() => judge(entries()));
  const entry = (field: 'ohms' | 'at' | 'added') => (
    <Entry
      words={props.words}
      field={field}
      unit={entries().unit}
      value={entries()[field]}
      problem={judged().problems[field]}
      onInput={(text) => put({ [field]: text })}
    />
  );
  const choice = <K extends 'unit' | 'r0'>(
    key: K,
    all: readonly Entries[K][],
    label: (one: Entries[K]) => Key,
  ) => (
    <fieldset>
      <legend>{t(`bench:${key}.label`)}</legend>
      <For each={all}>
        {(one) => (
          <label>
            <input
              type="radio"
              name={key}
              checked={entries()[key] === one}
              onChange={() => put({ [key]: one })}
            />
            {t(label(one))}
          </label>
        )}
      </For>
    </fieldset>
  );
  return (
    <div class="bench">
      <div class="card">
        {choice('unit', units, (unit) => `bench:unit.${unit}`)}
        {choice('r0', sensors, (name) => `bench:r0.${name}`)}
        {entry('ohms')}
        {entry('at')}
      </div>
      <section class="card found" aria-live="polite">
        <h2>{t('bench:result')}</h2>
        <Show
          when={judged().ohms !== undefined || judged().expected}
          fallback={<p class="quiet">{t('bench:nothing')}</p>}
        >
          <Finding words={props.words} entries={entries()} judged={judged()} />
        </Show>
      </section>
      <Curve words={props.words} entries={entries()} judged={judged()} />
      <section class="card">
        <h2>{t('bench:added.title')}</h2>
        <p class="quiet">{t('bench:added.lead')}</p>
        {entry('added')}
        <Added words={props.words} entries={entries()} judged={judged()} />
      </section>
    </div>
  );
}
