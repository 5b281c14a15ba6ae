/** The sound at the end of a count-down, and a buzz for who can't hear it, only where asked for. */
import { tryStorage } from '../shared/storage.ts';

const KEY = 'hobnote.chime';

/** Browsers let a page sound only after a tap on it; a tap before a reload does not count. */
let audio: AudioContext | undefined;

/** Follows the choice: kept on the device, and the sound made ready with the next tap. */
export function followChime(choice: HTMLInputElement, hint: HTMLElement): void {
  choice.checked = Boolean(tryStorage(() => localStorage.getItem(KEY)));
  hint.hidden = !choice.checked;
  choice.addEventListener('change', () => {
    // Where nothing is kept the choice holds while the page is open.
    tryStorage(() => {
      if (choice.checked) localStorage.setItem(KEY, '1');
      else localStorage.removeItem(KEY);
    });
  });
  addEventListener('click', () => {
    hint.hidden = true;
    if (choice.checked) void (audio ??= new AudioContext()).resume();
  });
}

export function chime(): void {
  if (!audio) return;
  // Not every browser has it, and none needs to.
  (navigator as { vibrate?: Navigator['vibrate'] }).vibrate?.([400, 200, 400]);
  for (const [index, pitch] of [660, 880].entries()) {
    const tone = audio.createOscillator();
    const volume = audio.createGain();
    volume.gain.value = 0.15;
    tone.frequency.value = pitch;
    tone.connect(volume).connect(audio.destination);
    tone.start(audio.currentTime + index * 0.4);
    tone.stop(audio.currentTime + index * 0.4 + 0.35);
  }
}
