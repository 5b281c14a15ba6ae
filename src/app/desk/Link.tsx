import { fragmentHash } from '../../address/fragment.ts';
import { parseId } from '../../guide/ids.ts';
import { CopyButton } from '../shared/CopyButton.tsx';
import { Key } from './Key.tsx';
import { letters } from './keys.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** The guide from where the call stands, sent to the caller's own phone; the code comes back later. */
export function Link(props: DeskProps) {
  const t = sayer(props);
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
        <CopyButton
          page={props.page}
          label={t('desk:link.copy')}
          text={message}
          done={t('desk:link.copied')}
        />
      </div>
    </section>
  );
}
