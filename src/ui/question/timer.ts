/**
 * The count-down of a page. Its end time rides in the fragment (`w=`), so it survives
 * reload, a sleeping phone and blocked storage; the display is worked out from the
 * clock each time, never counted.
 */
import { clock, waitMinutes } from './countdown.ts';

const box = document.querySelector<HTMLElement>('[data-timer]');

function values(): URLSearchParams {
  return new URLSearchParams(location.hash.slice(1));
}

function chime(): void {
  const sound = new AudioContext();
  for (const [index, pitch] of [660, 880].entries()) {
    const tone = sound.createOscillator();
    const volume = sound.createGain();
    volume.gain.value = 0.15;
    tone.frequency.value = pitch;
    tone.connect(volume).connect(sound.destination);
    tone.start(sound.currentTime + index * 0.4);
    tone.stop(sound.currentTime + index * 0.4 + 0.35);
  }
}

function run(box: HTMLElement): void {
  const page = box.closest<HTMLElement>('.page');
  const node = page?.dataset['node'] ?? '';
  const start = box.querySelector<HTMLButtonElement>('.start');
  const face = box.querySelector<HTMLElement>('.clock');
  const said = box.querySelector<HTMLElement>('.said');
  const sound = box.querySelector<HTMLElement>('.chime');
  if (!start || !face || !said || !sound) return;
  const [earliest, latest] = [Number(box.dataset['earliest']), Number(box.dataset['latest'])];
  let over = false;

  /** End of the whole wait in seconds since 1970, or undefined. */
  function end(): number | undefined {
    const [at, text = ''] = (values().get('w') ?? '').split('.');
    const parsed = parseInt(text, 36);
    return at === node && parsed > 0 ? parsed : undefined;
  }

  function show(): void {
    const until = end();
    if (!face || !start || !said || until === undefined) return;
    face.hidden = false;
    start.textContent = start.dataset['again'] ?? '';
    const left = until - Date.now() / 1000;
    // The soonest end lies before the slowest by the width of the window.
    const sooner = left - (latest - earliest) * 60;
    for (const part of face.querySelectorAll<HTMLElement>('[data-left]'))
      part.textContent = clock(part.dataset['left'] === 'earliest' ? sooner : left);
    const now = (box.dataset['timer'] === 'cooling' ? sooner : left) <= 0;
    if (now && !over) {
      said.textContent = said.dataset['over'] ?? '';
      if (sound?.querySelector('input')?.checked) chime();
    }
    if (!now) said.textContent = '';
    over = now;
  }

  start.hidden = false;
  sound.hidden = false;
  start.addEventListener('click', () => {
    const all = values();
    const minutes = waitMinutes(box.dataset['timer'] ?? '', latest, all.get('j') ?? '');
    const until = Math.round(Date.now() / 1000) + minutes * 60;
    all.set('w', `${node}.${until.toString(36)}`);
    history.replaceState(null, '', `#${all.toString().replaceAll('%7E', '~')}`);
    // The copy to resume from and the ways on must carry the timer too.
    dispatchEvent(new Event('hashchange'));
    over = false;
    show();
  });
  setInterval(show, 1000);
  document.addEventListener('visibilitychange', show);
  show();
}

if (box) run(box);
