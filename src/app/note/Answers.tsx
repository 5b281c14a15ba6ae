import { For } from 'solid-js';
import type { Fragment } from '../../address/fragment.ts';
import type { Words } from '../shared/words.ts';
import type { Traced } from './traced.ts';
import { answerOf, titleOf } from './sentences.ts';
import { hashOf, pageOf } from './state.ts';

/** What was answered, each answer with the way back to change it. */
export function Answers(props: { words: Words; traced: Traced; fragment: Fragment }) {
  const back = (index: number, node: string) => {
    const { error, details, model, remark, kept, journey } = props.fragment;
    const before = hashOf({
      guide: props.traced.guide.id,
      journey: journey.slice(0, index),
      details,
      ...(error ? { error } : {}),
      ...(model ? { model } : {}),
      ...(remark ? { remark } : {}),
      ...(kept ? { kept } : {}),
    });
    return pageOf(props.traced.guide, node) + before;
  };
  return (
    <section class="card told-answers">
      <h2>{props.words.t('answers.title')}</h2>
      <p class="quiet no-print">{props.words.t('answers.hint')}</p>
      <ol class="given">
        <For each={props.traced.steps}>
          {({ node, edge }, index) => {
            const asked = () => titleOf(props.words, props.traced.guide, node);
            return (
              <li>
                <p>
                  <span class="asked">{asked()}</span>
                  <strong>{answerOf(props.words, props.traced.guide, node, edge.id)}</strong>
                </p>
                <a
                  class="change no-print"
                  href={back(index(), node.id)}
                  aria-label={props.words.t('answers.changeThis', { asked: asked() })}
                >
                  {props.words.t('answers.change')}
                </a>
              </li>
            );
          }}
        </For>
      </ol>
    </section>
  );
}
