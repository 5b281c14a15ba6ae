/**
 * The count-down of a page. What is left rides in the fragment (`w=`), so it survives reload,
 * a sleeping phone and blocked storage. What counts as gone by is for `journey/wait.ts` to say.
 */
import { hashOf, parseRaw } from '../../address/grammar.ts';
import { parseJourney } from '../../address/journey-text.ts';
import { formatTimer, parseTimer, waitOf } from '../../address/timer.ts';
import type { NodeId } from '../../guide/types.ts';
import { STORED } from '../shared/stored-journey.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import { keepAwake } from './awake.ts';
import { chime, followChime } from './chime.ts';
import { savedAddress } from './saved.ts';
import { heatEndedAs } from '../../journey/heat.ts';
import {
  begin,
  clock,
  count,
  gap,
  isSetBack,
  leaveOut,
  left,
  pass,
  waitMinutes,
} from '../../journey/wait.ts';
import type { Wait } from '../../journey/wait.ts';

const box = document.querySelector<HTMLElement>('[data-timer]');
/** Seconds after which the fragment follows: what a page killed at once may leave uncounted. */
const WRITTEN_EACH = 10;

const values = () => parseRaw(location.hash);
const now = (): number => Date.now() / 1000;

function run(box: HTMLElement): void {
  const find = (part: string) => box.querySelector<HTMLElement>(part);
  const page = box.closest<HTMLElement>('.page');
  const node = (page?.dataset['node'] ?? '') as NodeId;
  const [start, face, said, asks] = ['.start', '.clock', '.said', '.gap'].map(find);
  const sound = find('.chime');
  const choice = sound?.querySelector('input');
  if (!start || !face || !said || !asks || !sound || !choice) return;
  const [earliest, latest] = [Number(box.dataset['earliest']), Number(box.dataset['latest'])];
  // The soonest end lies before the slowest by the width of the window.
  const window = (latest - earliest) * 60;
  const kind = box.dataset['timer'] === 'cooling' ? 'cooling' : 'fixed';
  const length = (): number => {
    const { g, j = '' } = values();
    const first = g ?? page?.dataset['guide'] ?? '';
    const ended = heatEndedAs(box.dataset['heat'] ?? '', first, parseJourney(j));
    return waitMinutes({ kind, minutes: [earliest, latest] }, ended) * 60;
  };

  let wait: Wait | undefined;
  let written = 0;
  let over = false;
  /** What to say while nothing else is to be said, by its key. */
  let note = '';
  let last = performance.now();

  const waitIn = (text: string | undefined) => waitOf(parseTimer(text), node, length(), now());

  function read(): void {
    wait = waitIn(values().w);
  }

  function write(): void {
    if (!wait) return;
    replaceHash(hashOf({ ...values(), w: formatTimer({ node, ...wait }) }));
    written = wait.counted;
  }

  /** The copy to resume from and other tabs follow too. */
  const tell = (): boolean => dispatchEvent(new Event('hashchange'));

  function tick(): void {
    const stamp = performance.now();
    if (wait) {
      wait = pass(wait, (stamp - last) / 1000);
      if (isSetBack(wait, now())) {
        wait = leaveOut(wait, now());
        note = 'back';
      }
      if (Math.abs(wait.counted - written) >= WRITTEN_EACH) write();
    }
    last = stamp;
    show();
  }

  function show(): void {
    if (!wait || !start || !face || !said || !asks) return;
    face.hidden = false;
    start.textContent = start.dataset['again'] ?? '';
    const unseen = gap(wait, now());
    const latestEnd = left(wait);
    for (const part of box.querySelectorAll<HTMLElement>('[data-left]'))
      part.textContent = clock(
        { earliest: latestEnd - window, gap: unseen }[part.dataset['left'] ?? ''] ?? latestEnd,
      );
    asks.hidden = unseen === 0;
    const nowOver = latestEnd <= window;
    // A status is read out anew with every change.
    const text = said.dataset[unseen > 0 ? 'gap' : nowOver ? 'over' : note] ?? '';
    if (said.textContent !== text) said.textContent = text;
    if (nowOver && !over && choice?.checked) chime();
    over = nowOver;
    keepAwake(!over);
  }

  function take(next: Wait, why: string): void {
    wait = next;
    note = why;
    write();
    tell();
    show();
  }

  start.hidden = false;
  sound.hidden = false;
  followChime(choice, find('.tap'));
  start.addEventListener('click', () => {
    over = false;
    take(begin(now(), length()), '');
  });
  find('.yes')?.addEventListener('click', () => wait && take(count(wait, now()), ''));
  find('.no')?.addEventListener('click', () => wait && take(leaveOut(wait, now()), 'no'));
  addEventListener('hashchange', ({ isTrusted }) => {
    if (!isTrusted) return;
    read();
    tick();
  });
  // A timer started in another tab with the same journey: the longer wait is taken.
  addEventListener('storage', ({ key, newValue }) => {
    const address = key === STORED && savedAddress(newValue ?? '', location.href);
    if (!address) return;
    const { pathname, hash } = new URL(address);
    const [theirs, ours] = [parseRaw(hash), values()];
    const other = waitIn(theirs.w);
    const isSame = hashOf({ ...theirs, w: '' }) === hashOf({ ...ours, w: '' });
    if (pathname !== location.pathname || !isSame || !other) return;
    if (wait && left(other) <= left(wait)) return;
    wait = other;
    write();
    tick();
  });
  document.addEventListener('visibilitychange', () => {
    tick();
    if (wait && document.hidden) {
      write();
      tell();
    }
  });
  setInterval(tick, 1000);
  read();
  tick();
}

if (box) run(box);
