import { For, Show, createMemo, type JSX } from 'solid-js';
import { dayBar } from '../../route/day-bar.ts';
import { sayer } from '../shared/words.ts';
import type { RouteProps } from './props.ts';

const HOUR = 60;

/** The day to scale, for the eye: the list says when each visit is. What cannot be in time is told. */
export function TimeBar(props: RouteProps): JSX.Element {
  const t = sayer(props);
  const visits = () => props.route.visits();
  const blocks = createMemo(() =>
    dayBar(visits().map((visit) => ({ ...visit.assessed, window: props.route.windowOf(visit) }))),
  );
  const start = createMemo(() =>
    Math.floor(
      Math.min(...blocks().map(({ from, window }) => Math.min(from, window?.from ?? from))) / HOUR,
    ),
  );
  const end = createMemo(() =>
    Math.ceil(
      Math.max(...blocks().map(({ cautious, window }) => Math.max(cautious, window?.to ?? 0))) /
        HOUR,
    ),
  );
  const share = (minutes: number) => `${(100 * minutes) / HOUR / Math.max(1, end() - start())}%`;
  const at = (from: number, to: number) => ({
    'inset-inline-start': share(from - start() * HOUR),
    width: share(to - from),
  });
  const hours = () => {
    const { language } = props.page.words;
    const format = new Intl.DateTimeFormat(language, { hour: 'numeric', timeZone: 'UTC' });
    const first = start();
    return Array.from({ length: end() - first }, (_, index) => {
      const from = (first + index) * HOUR;
      return { from, label: format.format(from * 60_000) };
    });
  };
  const late = () => blocks().flatMap(({ late: is, place }) => (is ? [String(place)] : []));
  /** Times of one day alone can stand on one line. */
  const oneDay = () => new Set(blocks().flatMap(({ window }) => window?.day ?? [])).size < 2;
  return (
    <Show when={oneDay() && blocks().some(({ window }) => window)}>
      <div class="time-bar" aria-hidden="true">
        <For each={hours()}>
          {({ from, label }) => (
            <span class="hour" style={at(from, from + HOUR)}>
              {label}
            </span>
          )}
        </For>
        <For each={blocks()}>
          {(block, index) => (
            <>
              <Show when={block.window?.to}>
                {(to) => <span class="window" style={at(block.window?.from ?? 0, to())} />}
              </Show>
              <span class="tail" style={at(block.to, block.cautious)} />
              <span
                class="block"
                data-urgency={visits()[index()]?.seen?.urgency ?? 'open'}
                style={at(block.from, block.to)}
              >
                {block.place}
              </span>
            </>
          )}
        </For>
      </div>
      <Show when={late().length > 0}>
        <p class="strong">{t('round:total.late', { places: late().join(', ') })}</p>
      </Show>
    </Show>
  );
}
