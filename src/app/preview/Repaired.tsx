import { For, Show, type JSX } from 'solid-js';
import { digitGroup, digitsOf } from '../../note/spelling.ts';
import { beside } from '../../note/repair.ts';
import { groupSize } from '../../note/symbols.ts';
import type { CodeEdit, Reading } from '../../note/types.ts';
import { Compared } from '../shared/Compared.tsx';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';

interface Props {
  readonly page: Pick<Page, 'words'>;
  readonly reading: Extract<Reading, { kind: 'repaired' }>;
  onYes(): void;
  onNo(): void;
}

/** With fewer check symbols left a random text passes once in 32 or oftener. */
const SPARE_ENOUGH = 2;

/** A proposed code: what was changed, and the question whether it is the caller's. */
export function Repaired(props: Props): JSX.Element {
  const t = sayer(props);
  const given = () => (props.reading.digits ? digitsOf(props.reading.code) : props.reading.code);
  const group = () => (props.reading.digits ? digitGroup : groupSize);
  return (
    <section class="card repair">
      <h2>{t('preview:repair.title')}</h2>
      <p>{t('preview:repair.lead')}</p>
      <p class="unseen">{props.reading.code}</p>
      <p class="quiet">{t('preview:repair.compared')}</p>
      <Compared places={beside(given(), props.reading.places)} above="was" group={group()} />
      <h3>{t('preview:repair.changed')}</h3>
      <ul>
        <For each={props.reading.places}>
          {(place) => <li>{changeWords(props.page, place, group())}</li>}
        </For>
      </ul>
      <Show when={props.reading.spare < SPARE_ENOUGH}>
        <p class="strong">{t('preview:repair.weak')}</p>
      </Show>
      <div class="ways">
        <button type="button" onClick={() => props.onYes()}>
          {t('preview:repair.yes')}
        </button>
        <button type="button" class="plain" onClick={() => props.onNo()}>
          {t('preview:repair.no')}
        </button>
      </div>
    </section>
  );
}

function changeWords(
  { words }: Pick<Page, 'words'>,
  { how, at, was, is }: CodeEdit,
  size: number,
): string {
  const place = how === 'added' ? at + 1 : (at % size) + 1;
  return words.t(`preview:repair.${how}`, { group: Math.floor(at / size) + 1, place, was, is });
}
