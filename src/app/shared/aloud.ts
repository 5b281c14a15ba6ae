/**
 * Reads a page out for people who cannot read it well: where the browser has a voice of the page's
 * language there is a button, and what is being read is marked.
 */
const button = document.querySelector<HTMLButtonElement>('.listen');
const speech = (window as { speechSynthesis?: SpeechSynthesis }).speechSynthesis;
const { lang } = document.documentElement;

/** What is read, each part by itself: voices may fall silent in the middle of long texts. */
const PARTS = 'main :is(h1, h2, h3, p, li, dt, dd, a.button, .answers a)';

/** What is in sight, from top to bottom; of a part and the parts in it only those. */
function parts(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>(PARTS)].filter(
    (part) =>
      part.offsetParent &&
      part.innerText.trim() &&
      !part.closest('nav, .stages, .unseen, details:not([open])') &&
      !part.querySelector(PARTS),
  );
}

/** Once it has been said, or failed to be, the reading is over. */
let last: SpeechSynthesisUtterance | undefined;

function turn(on: boolean): void {
  last = undefined;
  speech?.cancel();
  button?.setAttribute('aria-pressed', String(on));
}

function read(): void {
  const on = button?.getAttribute('aria-pressed') === 'false';
  turn(on);
  if (!on) return;
  for (const part of parts()) {
    const words = new SpeechSynthesisUtterance(part.innerText);
    words.lang = lang;
    words.onstart = () => {
      part.classList.add('spoken');
      part.scrollIntoView({ block: 'nearest' });
    };
    words.onend = words.onerror = () => {
      part.classList.remove('spoken');
      if (words === last) turn(false);
    };
    last = words;
    speech?.speak(words);
  }
}

if (button && speech) {
  // A voice of another language would make a riddle of the page. Voices may come late.
  (speech.onvoiceschanged = () => {
    button.disabled = !speech.getVoices().some((voice) => voice.lang.startsWith(lang.slice(0, 2)));
  })();
  button.addEventListener('click', read);
  addEventListener('pagehide', () => {
    turn(false);
  });
}
