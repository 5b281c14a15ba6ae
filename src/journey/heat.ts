/**
 * How long ago the heat stopped, as a journey tells. A module of its own and small: question pages
 * load it, and know of the model only what `heatTold` of `src/site` has put on them.
 */
import { whole } from '../guide/ids.ts';
import type { Journey } from '../guide/types.ts';

/**
 * Minutes since the heat stopped, at least, after these steps: as the last answer that tells says.
 * A step that can heat makes what was told before it worthless.
 */
export function heatEnded(
  steps: Iterable<{ readonly heat: boolean; readonly ended: number | undefined }>,
): number | undefined {
  let minutes: number | undefined;
  for (const { heat, ended } of steps) minutes = ended ?? (heat ? undefined : minutes);
  return minutes;
}

/**
 * The same of a journey on a page that does not know its guide.
 *
 * @param told `guide/node` for each step that can heat and `guide/node.answer=minutes` for each
 *   answer that tells, joined by spaces
 * @param first the guide the journey began in
 */
export function heatEndedAs(told: string, first: string, journey: Journey): number | undefined {
  const marks = new Map(
    told.split(' ').map((mark) => mark.split('=', 2) as [string, string | undefined]),
  );
  return heatEnded(
    journey.map(({ at, answer }) => {
      const node = whole(first, at);
      const minutes = marks.get(`${node}.${answer}`);
      return { heat: marks.has(node), ended: minutes === undefined ? undefined : Number(minutes) };
    }),
  );
}
