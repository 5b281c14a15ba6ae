import { For, Show, createSignal, type JSX } from 'solid-js';
import '../visits/no-eval.ts';
import { named, onceEach, readVisits, unknownNames } from '../../diagnosis/read-visits.ts';
import { USUAL } from '../../diagnosis/learn.ts';
import { FOLDS, study, type Study } from '../../diagnosis/score.ts';
import type { RecordedVisit } from '../../diagnosis/visits-schema.ts';
import { guideName } from '../shared/content-words.ts';
import { breathe } from '../shared/breathe.ts';
import { download } from '../shared/download.ts';
import { FileButton } from '../shared/FileButton.tsx';
import { fetchData } from '../shared/fetched.ts';
import { sayer } from '../shared/words.ts';
import { fileText, type ImportProblem } from '../visits/stored.ts';
import { problemLines } from '../visits/words.ts';
import { Changes } from './Changes.tsx';
import { Reliability } from './Reliability.tsx';
import type { LearnPart, Page } from './page.ts';

/** A file that was taken, with its visits or why there are none. */
interface Taken {
  readonly name: string;
  readonly guide: string;
  readonly visits: readonly RecordedVisit[];
  readonly problems: readonly ImportProblem[];
}

/** The technicians' files in, what they would change out, for whoever builds the copy. */
export function LearnPage(props: { readonly page: Page }): JSX.Element {
  const t = sayer(props);
  const [part, setPart] = createSignal<LearnPart>();
  const [files, setFiles] = createSignal<readonly Taken[]>([]);
  const [found, setFound] = createSignal<Study>();
  const [said, setSaid] = createSignal('');

  const taken = async (file: File, { model }: LearnPart): Promise<Taken> => {
    const bad = (problems: readonly ImportProblem[]): Taken => ({
      ...{ name: file.name, guide: '', visits: [], problems },
    });
    const text = await fileText(file);
    if (!text.ok) return bad([text.error]);
    const read = readVisits(text.value);
    if (!read.ok) return bad(read.error);
    const { guide, visits } = read.value;
    const problems = unknownNames(read.value, model);
    const tables = new Set(Object.keys(model.observations));
    const own = problems.length > 0 ? [] : visits.map((visit) => named(visit, guide, tables));
    return { name: file.name, guide, visits: own, problems };
  };
  const take = async (list: readonly File[]): Promise<void> => {
    setSaid(t('learn:working'));
    const known = part() ?? (await load());
    if (!known) {
      setSaid(t('learn:failed'));
      return;
    }
    const more = await Promise.all(list.map((file) => taken(file, known)));
    setFiles([...files().filter(({ name }) => !more.some((one) => one.name === name)), ...more]);
    // The page shows that it works before it does.
    await breathe();
    const visits = onceEach(files().flatMap((one) => one.visits));
    const { model, selection } = known;
    setFound(visits.length > 0 ? study(model, visits, { ...USUAL, selection }) : undefined);
    setSaid('');
  };
  const load = async (): Promise<LearnPart | undefined> => {
    const data = await fetchData(props.page.part);
    if (!data.ok) return undefined;
    setPart(data.value as LearnPart);
    return part();
  };
  const save = async ({ changes }: Study): Promise<void> => {
    const writer = await import('../../diagnosis/rewrite.ts').catch(() => undefined);
    if (!writer) setSaid(t('learn:failed'));
    for (const { file, source } of writer ? (part()?.sources ?? []) : []) {
      const text = writer?.rewritten(source, changes) ?? source;
      if (text !== source) download(file, text, 'application/yaml');
    }
  };
  const verdict = ({ heldOut, changes, better }: Study): string => {
    if (!heldOut) return t('learn:verdict.few', { least: FOLDS });
    if (changes.length === 0) return t('learn:verdict.none', { least: USUAL.minimum });
    return t(better ? 'learn:verdict.better' : 'learn:verdict.same');
  };

  return (
    <>
      <section class="card">
        <FileButton
          label={t('learn:add')}
          accept=".json,application/json"
          multiple
          onFile={(...list) => take(list)}
        />
        <p role="status">{said()}</p>
        <Show when={files().length > 0}>
          <ul>
            <For each={files()}>
              {({ name, guide, visits, problems }) => (
                <li>
                  <bdi>{name}</bdi>
                  {': '}
                  {problems.length > 0
                    ? problemLines(props.page.words, problems).join(' ')
                    : t('learn:read', {
                        count: visits.length,
                        guide: guideName(props.page.words, guide),
                      })}
                </li>
              )}
            </For>
          </ul>
        </Show>
      </section>
      <Show when={found()}>
        {(study) => (
          <section class="card">
            <h2>{t('learn:summary', { count: study().visits })}</h2>
            <p>{t('learn:unlisted', { count: study().unlisted })}</p>
            <p class="strong">{verdict(study())}</p>
            <Show when={study().better}>
              <p>{t('learn:next')}</p>
              <button type="button" onClick={() => void save(study())}>
                {t('learn:save')}
              </button>
            </Show>
          </section>
        )}
      </Show>
      <Show when={found()?.heldOut}>
        {(heldOut) => <Reliability page={props.page} heldOut={heldOut()} />}
      </Show>
      <Show when={part()}>
        {(known) => <Changes page={props.page} part={known()} changes={found()?.changes ?? []} />}
      </Show>
    </>
  );
}
