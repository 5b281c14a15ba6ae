import { defined } from '../../defined.ts';
import type { Fragment } from '../../address/fragment.ts';
import { codebookGuide, type Codebook } from '../../note/codebook.ts';
import type { Words } from '../shared/words.ts';
import { hashOf, pageOf } from './state.ts';

/** No journey, or one that fits no guide: start at the beginning, what was written kept. */
export function Lost(props: {
  words: Words;
  codebook: Codebook;
  guide: string;
  fragment: Fragment;
}) {
  const why = () => (props.fragment.journey.length === 0 ? 'empty' : 'astray');
  const written = () => {
    const { error, details, model, remark, stored } = props.fragment;
    return hashOf({
      journey: [],
      details,
      ...defined({ error, model, remark, stored }),
    });
  };
  const start = () => {
    const guide = codebookGuide(props.codebook, props.guide);
    return guide ? pageOf(guide, guide.start) + written() : `../${written()}`;
  };
  return (
    <section class="card">
      <h2>{props.words.t(`note:${why()}.title`)}</h2>
      <p>{props.words.t(`note:${why()}.text`)}</p>
      <p>
        <a class="button" href={start()}>
          {props.words.t('note:start')}
        </a>
      </p>
    </section>
  );
}
