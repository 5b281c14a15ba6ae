/**
 * The count-down of a page, told by the time of day it ends at. What is left rides in the fragment
 * (`w=`), so it survives a reload and a sleeping phone; a link that was passed on, or where storage
 * is blocked, starts the wait again. What counts as gone by is for `journey/wait.ts` to say.
 */
import { hashOf, parseRaw } from '../../address/grammar.ts';
import { parseJourney } from '../../address/journey-text.ts';
import { formatTimer, parseTimer, waitOf } from '../../address/timer.ts';
import type { NodeId, Timer } from '../../guide/types.ts';
import { STORED, keptJourneys } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import { keepAwake } from './awake.ts';
import { chime, followChime } from './chime.ts';
import { savedAddress } from './saved.ts';
import { heatEndedAs } from '../../journey/heat.ts';
import {
  begin,
  clock,
  count,
  countAbsence,
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

/** Where the tab keeps the timer it wrote last. */
const OWN = 'hobnote.wait';

const values = () => parseRaw(location.hash);
/**
 * Does an address say no more of a wait than this tab has counted, or the journey that this device
 * would go on with? A page that is left may not get to write its address any more.
 */
function isOwn(text: string): boolean {
  const timer = parseTimer(text);
  const written = [
    tryStorage(() => sessionStorage.getItem(OWN)),
    ...(tryStorage(keptJourneys) ?? [])
      .filter((kept) => kept.startsWith(`${location.pathname}#`))
      .map((kept) => parseRaw(/#\S*/.exec(kept)?.[0] ?? '').w),
  ].map((one) => parseTimer(one ?? ''));
  return written.some(
    (own) =>
      own?.node === timer?.node &&
      (timer?.end ?? 0) >= (own?.end ?? Infinity) &&
      (timer?.counted ?? 0) <= (own?.counted ?? 0),
  );
}
const now = (): number => Date.now() / 1000;

/** The time of day as people write it where the device is, in the page's language. */
const { lang } = document.documentElement;
const [, region] = /-([A-Z]{2})\b/.exec(navigator.language) ?? [];
const ofDay = new Intl.DateTimeFormat(region ? `${lang.slice(0, 2)}-${region}` : lang, {
  hour: 'numeric',
  minute: '2-digit',
});

function put(part: Element, text: string): void {
  // A status is read out anew with every change.
  if (part.textContent !== text) part.textContent = text;
}

function run(box: HTMLElement): void {
  const find = (part: string) => box.querySelector<HTMLElement>(part);
  const page = box.closest<HTMLElement>('.page');
  const node = (page?.dataset['node'] ?? '') as NodeId;
  const [start, face, said, asks, hint] = ['.start', '.clock', '.said', '.gap', '.tap'].map(find);
  const choice = box.querySelector('input');
  if (!start || !face || !said || !asks || !hint || !choice) return;
  const [earliest, latest] = [Number(box.dataset['earliest']), Number(box.dataset['latest'])];
  // The soonest end lies before the slowest by the width of the window.
  const window = (latest - earliest) * 60;
  const kind = box.dataset['timer'] as Timer['kind'];
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
  /** Was nobody there to see how much time went by since the last look? */
  let absent = true;

  const waitIn = (text: string | undefined) => waitOf(parseTimer(text), node, length(), now());

  function read(): void {
    const { w = '' } = values();
    const found = waitIn(w);
    // What somebody else has counted is no reason to open a hot oven here.
    wait = found && !isOwn(w) ? begin(now(), length()) : found;
  }

  function write(): void {
    if (!wait) return;
    const w = formatTimer({ node, ...wait });
    tryStorage(() => {
      sessionStorage.setItem(OWN, w);
    });
    replaceHash(hashOf({ ...values(), w }));
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
      } else if (absent) wait = countAbsence(wait, now(), latest * 60);
      if (Math.abs(wait.counted - written) >= WRITTEN_EACH) write();
    }
    last = stamp;
    absent = document.hidden;
    show();
  }

  const show = (): void => {
    if (!wait) return;
    face.hidden = false;
    put(start, start.dataset['again'] ?? '');
    // It would throw away what is counted.
    start.dataset['confirm'] = start.dataset['twice'];
    const unseen = gap(wait, now());
    const latestEnd = left(wait);
    const of = { earliest: latestEnd - window, gap: unseen } as Record<string, number>;
    for (const part of box.querySelectorAll<HTMLElement>('[data-left]'))
      put(part, clock(of[part.dataset['left'] ?? ''] ?? latestEnd));
    for (const part of box.querySelectorAll<HTMLElement>('[data-ends]')) {
      const before = part.dataset['ends'] === 'earliest' ? window : 0;
      // The minute after, never the one before.
      const minute = Math.ceil((wait.end + unseen - before) / 60);
      put(part, (part.dataset['text'] ?? '').replace('{{time}}', ofDay.format(minute * 60_000)));
    }
    // The bar: what is gone by, and from where on it may be over.
    const percent = 100 / length();
    face.style.cssText = `--gone:${String(100 - latestEnd * percent)}%;--open:${String(100 - window * percent)}%`;
    asks.hidden = unseen === 0;
    box.classList.toggle('asks', unseen > 0);
    const nowOver = latestEnd <= window;
    put(said, said.dataset[unseen > 0 ? 'gap' : nowOver ? 'over' : note] ?? '');
    if (nowOver && !over && choice.checked) chime();
    over = nowOver;
    keepAwake(!over);
  };

  function take(next: Wait, why: string): void {
    wait = next;
    note = why;
    write();
    tell();
    show();
  }

  start.hidden = false;
  followChime(choice, hint);
  start.addEventListener('click', ({ defaultPrevented }) => {
    if (defaultPrevented) return;
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
    const [theirs, ours] = [parseRaw(address.hash), values()];
    const other = waitIn(theirs.w);
    const isSame = hashOf({ ...theirs, w: '' }) === hashOf({ ...ours, w: '' });
    if (address.pathname !== location.pathname || !isSame || !other) return;
    if (wait && left(other) <= left(wait)) return;
    wait = other;
    write();
    tick();
  });
  document.addEventListener('visibilitychange', () => {
    tick();
    absent = true;
    if (wait && document.hidden) {
      write();
      tell();
    }
  });
  setInterval(tick, 1000);
  read();
  write();
  tick();
}

if (box) run(box);
