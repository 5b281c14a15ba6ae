import { For } from 'solid-js';
import { defined } from '../../defined.ts';
import type { Fragment } from '../../address/fragment.ts';
import type { Words } from '../shared/words.ts';
import type { Traced } from './traced.ts';
import { answerWords, nodeWords } from '../shared/content-words.ts';
import { hashOf, pageOf } from './state.ts';

/** What was answered, each answer with the way back to change it. */
export function Answers(props: { words: Words; traced: Traced; fragment: Fragment }) {
  const back = (index: number, node: string) => {
    const { error, details, model, remark, stored, journey } = props.fragment;
    const before = hashOf({
      guide: props.traced.guide.id,
      journey: journey.slice(0, index),
      details,
      ...defined({ error, model, remark, stored }),
    });
    return pageOf(props.traced.guide, node) + before;
  };
  return (
    <section class="card told-answers">
      <h2>{props.words.t('note:answers.title')}</h2>
      <p class="quiet no-print">{props.words.t('note:answers.hint')}</p>
      <ol class="given">
        <For each={props.traced.steps}>
          {({ node, edge }, index) => {
            const asked = () => nodeWords(props.words, props.traced.guide, node).title;
            return (
              <li>
                <p>
                  <span class="asked">{asked()}</span>
                  <strong>{answerWords(props.words, props.traced.guide, node, edge.id)}</strong>
                </p>
                <a
                  class="change no-print"
                  href={back(index(), node.id)}
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
