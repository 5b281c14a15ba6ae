import { For } from 'solid-js';
import { defined } from '../../defined.ts';
import type { Fragment } from '../../address/fragment.ts';
import type { Words } from '../shared/words.ts';
import type { Retraced } from '../../journey/retrace.ts';
import { answerWords, nodeWords } from '../shared/content-words.ts';
import { hashOf, pageOf } from './state.ts';

/** What was answered, each answer with the way back to change it. */
export function Answers(props: { words: Words; retraced: Retraced; fragment: Fragment }) {
  const back = (index: number, node: string) => {
    const { error, details, model, remark, kept, journey } = props.fragment;
    const before = hashOf({
      guide: props.retraced.guide.id,
      journey: journey.slice(0, index),
      details,
      ...defined({ error, model, remark, kept }),
    });
    return pageOf(props.retraced.guide, node) + before;
  };
  return (
    <section class="card told-answers">
      <h2>{props.words.t('note:answers.title')}</h2>
      <p class="quiet no-print">{props.words.t('note:answers.hint')}</p>
      <ol class="given">
        <For each={props.retraced.passed}>
          {({ given, node }, index) => {
            const asked = () => nodeWords(props.words, props.retraced.guide, node).title;
            return (
              <li>
                <p>
                  <span class="asked">{asked()}</span>
                  <strong>
                    {answerWords(props.words, props.retraced.guide, node, given.answer)}
                  </strong>
                </p>
                <a
                  class="change no-print"
                  href={back(index(), given.at)}
                  aria-label={props.words.t('note:answers.changeThis', { asked: asked() })}
                >
                  {props.words.t('note:answers.change')}
                </a>
              </li>
            );
          }}
        </For>
      </ol>
    </section>
  );
}
