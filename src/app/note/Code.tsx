import { Show, createEffect, createMemo, createSignal, on } from 'solid-js';
import type { Fragment } from '../../address/fragment.ts';
import type { NoteCode } from '../../note/types.ts';
import { digitGroups, spell, spellAtHome } from '../../note/spelling.ts';
import { guideName, nodeWords } from '../shared/content-words.ts';
import type { Words } from '../shared/words.ts';
import type { Traced } from './traced.ts';
import { Groups } from './Groups.tsx';
import { Large } from './Large.tsx';
import { Pass } from './Pass.tsx';
import { previewAddress, previewPage, type Coded } from './code.ts';
import { qrPath } from './qr.ts';

/** Above this a phone's camera has trouble with the finer squares: the picture holds the code only. */
const QR_MOST = 400;

/** A note for whoever gets it, a landlord too: what happened, whom it is for, what to do, then the code. */
function message(
  words: Words,
  { guide, end, state }: Traced,
  code: NoteCode,
  link: string,
): string {
  const { title, now } = nodeWords(words, guide, end);
  const stands = state === 'open' ? `${words.t('note:open.title')} ${title}` : title;
  return [
    `${guideName(words, end.guide)}. ${stands}`,
    ...(now.length > 0 ? [words.t('note:message.until'), ...now.map((line) => `- ${line}`)] : []),
    words.t('note:message.whom'),
    words.t('note:message.code', { code }),
    link,
  ].join('\n');
}

/** The code to read out, to show and to hand on. */
export function Code(props: { words: Words; traced: Traced; coded: Coded; fragment: Fragment }) {
  const preview = previewPage();
  const spelled = createMemo(() => spell(props.coded.code, props.words.list('note:digits')));
  const [asDigits, setAsDigits] = createSignal(false);
  const digits = createMemo(() => digitGroups(props.coded.code));
  const long = createMemo(() => previewAddress(preview, props.coded, props.fragment));
  const short = () =>
    previewAddress(preview, { code: props.coded.code }, { journey: [], details: {} });
  const cut = () => long().length > QR_MOST;
  const qr = createMemo(() => qrPath(cut() ? short() : long()));
  const [said, setSaid] = createSignal('');
  createEffect(
    on(
      () => props.coded.code,
      () => setSaid(props.words.t('note:code.changed')),
      { defer: true },
    ),
  );
  return (
    <section class="card code-card">
      <h2>{props.words.t('note:code.title')}</h2>
      <p>{props.words.t('note:code.text')}</p>
      <Groups
        code={props.coded.code}
        spelled={spelled()}
        home={spellAtHome(props.coded.code, props.words.language)}
        label={props.words.t('note:code.label')}
      />
      <details onToggle={({ currentTarget }) => setAsDigits(currentTarget.open)}>
        <summary>{props.words.t('note:code.digits')}</summary>
        <Groups code={digits().join('-')} label={props.words.t('note:code.digits')} />
      </details>
      <p class="said" role="status">
        {said()}
      </p>
      <Pass
        words={props.words}
        code={props.coded.code}
        link={long()}
        message={message(props.words, props.traced, props.coded.code, long())}
        spelled={asDigits() ? digits().map((group) => [...group]) : spelled()}
        say={setSaid}
      >
        <Large words={props.words} code={props.coded.code} spelled={spelled()} />
      </Pass>
      <figure class="qr">
        <svg
          viewBox={`0 0 ${qr().size} ${qr().size}`}
          role="img"
          aria-label={props.words.t('note:qr.label')}
          shape-rendering="crispEdges"
        >
          <rect class="light" width={qr().size} height={qr().size} />
          <path class="dark" d={qr().path} />
        </svg>
        <figcaption>
          {props.words.t('note:qr.text')}
          <Show when={cut()}> {props.words.t('note:qr.cut')}</Show>
        </figcaption>
      </figure>
    </section>
  );
}
