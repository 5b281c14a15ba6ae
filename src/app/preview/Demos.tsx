import { For, type JSX } from 'solid-js';
import { hashOf } from '../../address/grammar.ts';
import { demoName } from '../shared/staff-words.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';

interface Props {
  readonly page: Page;
  /** A demo was chosen; its code. */
  onChoose(code: string): void;
}

/** Made-up visits to try; links, so that they can be opened beside and shared. */
export function Demos(props: Props): JSX.Element {
  const t = sayer(props);
  return (
    <section class="demos">
      <h2>{t('preview:demo.title')}</h2>
      <p class="quiet">{t('preview:demo.lead')}</p>
      <ul>
        <For each={props.page.demos}>
          {({ id, code }) => (
            <li>
              <a
                href={hashOf({ c: code })}
                onClick={(event) => {
                  if (event.ctrlKey || event.metaKey || event.shiftKey) return;
                  event.preventDefault();
                  props.onChoose(code);
                }}
              >
                <span>{demoName(props.page.words, id)}</span> <code>{code}</code>
              </a>
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}
