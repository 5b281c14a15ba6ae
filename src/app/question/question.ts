/**
 * What a guide page adds when scripts run: the journey rides along in every link's
 * fragment. Without it the page is complete: plain links, plain words.
 */
import { saves } from '../../offline/registration.ts';
import { qualify } from '../../guide/ids.ts';
import './second-tap.ts';
import type { Guarded } from './walk.ts';
import { isKept, store } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import { keepFragment } from '../shared/skip.ts';
import { caughtUp } from './early-tap.ts';
import { hashOf, parseRaw, type RawFragment } from '../../address/grammar.ts';
import { formatJourney, parseJourney } from '../../address/journey-text.ts';
import type { AnswerId, Journey, NodeId } from '../../guide/types.ts';

// Every page with this script has it.
const page: Guarded = document.querySelector<HTMLElement>('.page') ?? document.body;
const { guide: own = '', node: here = '', firsts = '', from = '', start } = page.dataset;
const isStart = start !== undefined;
const arrivals = new Set(from.split(' '));

function all(selector: string): HTMLAnchorElement[] {
  return [...document.querySelectorAll<HTMLAnchorElement>(selector)];
}

/** Does the last answer lead here? Where a slip could hurt, the page checks the whole walk (`walk.ts`). */
function belongs(first: string, journey: Journey): boolean {
  const last = journey.at(-1);
  if (!last) return first === own && isStart;
  // Only the nodes of guides a journey came to later say their guide in it.
  const at = qualify(first, last.at);
  const from = at.startsWith(`${own}/`) ? at.slice(own.length + 1) : at;
  return arrivals.has(`${from}.${last.answer}`) || arrivals.has(`*.${last.answer}`);
}

function apply(): void {
  const raw = parseRaw(location.hash);
  const values = caughtUp(raw, own, arrivals) ?? raw;
  const journey = parseJourney(values.j);
  // The guide the journey began in: its danger stops are the journey's.
  const first = values.g ?? own;
  const at = (first === own ? here : `${own}/${here}`) as NodeId;
  const fits =
    firsts.split(' ').includes(first) &&
    belongs(first, journey) &&
    page.leadsHere?.(first, values.j ?? '') !== false;
  page.querySelector('.lost')?.toggleAttribute('hidden', fits);
  document.body.classList.toggle('astray', !fits);
  if (!fits) {
    // Where nothing else is left to tap, the way to the beginning stands first; a stop is an answer itself.
    if (!page.leadsHere && !page.matches('.stop'))
      document.querySelector('details')?.toggleAttribute('open', true);
    return;
  }

  const carry = (link: HTMLAnchorElement, journey: Journey): void => {
    // A timer is one page's own, and an early tap is in the journey by now. What was said on the first
    // page waits behind the danger question, and no longer.
    const s = isStart ? values.s : '';
    link.hash = hashOf({ ...values, a: '', s, w: '', g: first, j: formatJourney(journey) });
  };
  const give = (link: HTMLAnchorElement, answer = ''): void => {
    carry(link, [...journey, { at, answer: answer as AnswerId }]);
  };
  for (const link of all('.page [data-answer]')) give(link, link.dataset['answer']);
  // A stop or finish ends its journey: there the danger list starts a new one.
  if (page.querySelector('[data-answer]'))
    for (const link of all('[data-exit]')) {
      link.pathname = link.pathname.replace(`/${own}/`, `/${first}/`);
      give(link, link.dataset['exit']);
    }
  for (const link of all('[data-note]')) carry(link, journey);

  const last = journey.at(-1);
  if (!last) return;
  for (const back of all('.back, .change')) {
    back.href = `../../${qualify(first, last.at)}/`;
    carry(back, journey.slice(0, -1));
    back.hidden = false;
  }
  const given = showSaid(said(values));
  // What was said on the first page is not asked again; Back comes to the question.
  const [told] = parseJourney(values.s);
  if (told || values !== raw) replaceHash(hashOf({ ...values, s: '' }));
  if (told?.at === here) page.querySelector<HTMLElement>(`[data-answer="${told.answer}"]`)?.click();
  // A link from elsewhere takes the place of nothing until an answer is given here.
  if (given || values !== raw || isKept(location.hash))
    store(location.pathname + location.hash, page.querySelector('h1')?.textContent);
}

/**
 * Where the tab keeps the words of a journey's last answer, which the next page does not know: under
 * the very journey, so that no other shows them, and the language they are in.
 */
const said = ({ g = own, j }: RawFragment): string =>
  `hobnote.said.${document.documentElement.lang}${hashOf({ g, j })}`;

/** Whether the journey's last answer was given in this tab. */
function showSaid(key: string): boolean {
  const words = page.querySelector('.you-said b');
  const text = tryStorage(() => sessionStorage.getItem(key));
  if (!words) return typeof text === 'string';
  words.textContent = text ?? '';
  words.closest('p')?.toggleAttribute('hidden', !text);
  return typeof text === 'string';
}

function takeError(): void {
  const field = page.querySelector('[data-error-field]');
  const input = field?.querySelector('input');
  if (!input) return;
  field?.toggleAttribute('hidden', false);
  input.value = (parseRaw(location.hash).e ?? '').slice(0, input.maxLength);
  input.addEventListener('input', () => {
    replaceHash(hashOf({ ...parseRaw(location.hash), e: input.value.trim() }));
    apply();
  });
}

// What comes next is kept before it is there: its own script may run later than the next tap.
document.addEventListener('click', ({ target, defaultPrevented }) => {
  const link = (target as Element).closest<HTMLAnchorElement>('[data-answer]');
  const values = parseRaw(link?.hash ?? '');
  if (!link || !values.j || defaultPrevented) return;
  store(link.pathname + link.hash);
  tryStorage(() => {
    sessionStorage.setItem(said(values), link.innerText);
  });
});
keepFragment();
addEventListener('hashchange', apply);
// A page that comes back as it was left is the place to resume from again.
addEventListener('pageshow', ({ persisted }) => {
  if (persisted) apply();
});
apply();
takeError();

/** Fetch what an answer leads to as soon as a finger or the focus is on it. */
function prefetch(event: Event): void {
  const link = (event.target as Element).closest<HTMLAnchorElement>('[data-answer], [data-note]');
  if (!link || saves || fetched.has(link.pathname)) return;
  fetched.add(link.pathname);
  const hint = document.createElement('link');
  hint.rel = 'prefetch';
  hint.href = link.pathname;
  document.head.append(hint);
}
const fetched = new Set<string>();
// Only Chromium takes such hints and knows these rules: WebKit has none, and Firefox counts a
// hint under the policy's default, which lets nothing through.
if (HTMLScriptElement.supports('speculationrules'))
  for (const sign of ['pointerover', 'touchstart', 'focusin']) addEventListener(sign, prefetch);
