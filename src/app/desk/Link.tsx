import { createSignal } from 'solid-js';
import { fragmentHash } from '../../address/fragment.ts';
import { parseId } from '../../guide/ids.ts';
import { copy } from '../shared/copy.ts';
import { Key } from './Key.tsx';
import { letters } from './keys.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** The guide from where the call stands, sent to the caller's own phone; the code comes back later. */
export function Link(props: DeskProps) {
  const t = sayer(props);
  const [copied, setCopied] = createSignal('');
  const link = (): string => {
    const { guide, journey, address } = props.desk;
    const { guide: of = guide.id, name } = parseId(journey.traced().end.id);
    const { journey: answers, details, error } = address.fragment();
    const began = of === guide.id ? {} : { guide: guide.id };
    const hash = fragmentHash({
      ...{ journey: answers, details, ...began },
      ...(error === undefined ? {} : { error }),
    });
    return new URL(`../${of}/${name}/${hash}`, location.href).href;
  };
  const message = () => t('desk:link.message', { link: link() });
  const phone = () => (props.desk.caller.caller().phone ?? '').replace(/[^+\d]/g, '');
  // RFC 5724 and RFC 6068.
  const sms = () => `sms:${phone()}?body=${encodeURIComponent(message())}`;
  const mail = () =>
    `mailto:?subject=${encodeURIComponent(t('desk:link.subject'))}&body=${encodeURIComponent(message())}`;
  return (
    <section class="panel link">
      <h2 id="desk-link" tabindex="-1">
        {t('desk:link.title')} <Key of={letters.link} />
      </h2>
      <div class="ways">
        <a class="button plain" href={sms()}>
          {t('desk:link.sms')}
        </a>
        <a class="button plain" href={mail()}>
          {t('desk:link.mail')}
        </a>
        <button
          type="button"
          class="plain"
          onClick={() => {
            const now = message();
            void copy(now).then((worked) => worked && setCopied(now));
          }}
        >
          {t('desk:link.copy')}
        </button>
      </div>
      <p class="quiet" role="status">
        {copied() === '' ? '' : t(copied() === message() ? 'desk:link.copied' : 'job:stale')}
      </p>
    </section>
  );
}
