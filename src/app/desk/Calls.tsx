import { Show, createMemo, createSignal, onCleanup, onMount } from 'solid-js';
import { parseFragment } from '../../address/fragment.ts';
import { codebookGuide, type CodebookGuide } from '../../note/codebook.ts';
import { Fetching } from '../shared/Fetching.tsx';
import { createFetched } from '../shared/fetched.ts';
import { tryStorage } from '../shared/storage.ts';
import { pageWords } from '../shared/words.ts';
import { Choose } from './Choose.tsx';
import { Desk } from './Desk.tsx';
import { createCaller, type Keeper } from './caller.ts';
import { createClocks } from './clocks.ts';
import { onDanger } from './danger.ts';
import { createOutcome } from './outcome.ts';
import type { DeskConfig, DeskPart, Page, Shell } from './page.ts';
import { createShortcuts } from './shortcuts.ts';
import { createDesk, type DeskState } from './state.ts';

/** Only a reload goes on with the same call; a copied or a new tab does not. */
function isReload(): boolean {
  const [entry] = performance.getEntriesByType('navigation');
  return (entry as PerformanceNavigationTiming | undefined)?.type === 'reload';
}

/** The tab's own storage, where the firm has switched it on and the browser has one. */
function keeperOf({ keepCaller }: DeskConfig): Keeper {
  return keepCaller === 'tab' ? tryStorage(() => sessionStorage) : undefined;
}

/** What is done once a guide's desk stands: a note taken over, a danger told. */
type Then = (desk: DeskState) => void;

/** One call after another: what the caller says chooses the guide, its desk does the rest. */
export function Calls(props: { readonly shell: Shell }) {
  // eslint-disable-next-line solid/reactivity -- what the page carries does not change
  const { shell } = props;
  const guides = shell.codebook.guides.filter(({ id }) => Object.hasOwn(shell.files, id));
  const first = Object.keys(shell.files).find((id) => codebookGuide(shell.codebook, id)) ?? '';
  const caller = createCaller(keeperOf(shell), !isReload());
  let then: Then | undefined;

  /** The guide an address is about; none where a new call begins and there is a choice. */
  const asked = (): string | undefined => {
    const { guide = first, journey, code } = parseFragment(location.hash).fragment;
    const known = guides.some(({ id }) => id === guide) ? guide : first;
    return guides.length < 2 || journey.length > 0 || code !== undefined ? known : undefined;
  };
  const [chosen, setChosen] = createSignal(asked());
  const choose = (guide: string, next?: Then): void => {
    then = next;
    setChosen(guide);
  };
  const changed = (): void => void setChosen(asked());
  addEventListener('hashchange', changed);
  onCleanup(() => removeEventListener('hashchange', changed));

  const fetched = createFetched<DeskPart>(() => shell.files[chosen() ?? '']);
  const page = createMemo((): Page | undefined => {
    const part = fetched.value();
    return part && { ...shell, ...part, words: pageWords(part.texts) };
  });

  const Call = (own: { readonly page: Page; readonly guide: CodebookGuide }) => {
    // eslint-disable-next-line solid/reactivity -- made once for each guide
    const desk = createDesk(own.page, own.guide, caller, {
      main: first,
      onOther: (note) => choose(note.guide, (other) => other.resume(note)),
      onNext: () => setChosen(asked()),
    });
    onDanger((answer) => {
      desk.journey.show('danger');
      desk.journey.choose(answer);
    });
    // eslint-disable-next-line solid/reactivity -- made once for each guide
    const outcome = createOutcome(own.page, desk);
    const shortcuts = createShortcuts(desk, (form) => void outcome.copyJob(form));
    const clocks = createClocks(desk);
    onMount(() => {
      then?.(desk);
      then = undefined;
    });
    return (
      <Desk page={own.page} desk={desk} outcome={outcome} shortcuts={shortcuts} clocks={clocks} />
    );
  };

  return (
    <Show
      when={codebookGuide(shell.codebook, chosen() ?? '')}
      keyed
      fallback={
        <Choose words={shell.words} files={shell.files} guides={guides} onChoose={choose} />
      }
    >
      {(guide) => (
        <Show when={page()} keyed fallback={<Fetching words={shell.words} fetched={fetched} />}>
          {(loaded) => <Call page={loaded} guide={guide} />}
        </Show>
      )}
    </Show>
  );
}
