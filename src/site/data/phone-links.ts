import type { Guide, Helper } from '../../guide/types.ts';
import { firm } from '../../content/load.ts';
import { words } from '../words.ts';
import type { Calls } from '../../app/note/calls.ts';

/**
 * Whom every stop of a joined guide sends the reader to, with the firm's numbers; at build time.
 * @param spoken to a caller, who has the firm on the line
 */
export function makeCalls(language: string, guide: Guide, spoken = false): Calls {
  const { t } = words(language);
  const { phone, numbers } = firm();
  const call = (helper: Helper) => ({
    label: t('site:end.call', { who: t(`site:end.calls.${helper}`) }),
    ...(helper === 'technician' ? phone : numbers[helper]),
  });
  return Object.fromEntries(
    [...guide.nodes.values()]
      .map(({ id, call: whom }): [string, readonly Helper[]] => [
        id,
        whom.filter((helper) => !spoken || helper !== 'technician'),
      ])
      .filter(([, whom]) => whom.length > 0)
      .map(([id, whom]) => [id, whom.map(call)]),
  );
}
