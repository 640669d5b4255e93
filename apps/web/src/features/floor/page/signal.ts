const silentKey = 'floor-silent';

export const isSilent = (): boolean => localStorage.getItem(silentKey) === 'yes';
export const setSilent = (silent: boolean): void => localStorage.setItem(silentKey, silent ? 'yes' : 'no');

let audio: AudioContext | undefined;

/** High and short: right; low and long: stop. With it the device shakes. Silent where somebody chose so, or the browser has no sound. */
export function signal(isRight: boolean): void {
  if (isSilent()) return;
  navigator.vibrate?.(isRight ? 60 : [250, 80, 250]);
  setTimeout(() => {
    try {
      audio ??= new AudioContext();
      const tone = audio.createOscillator();
      tone.frequency.value = isRight ? 880 : 220;
      tone.connect(audio.destination);
      tone.start();
      tone.stop(audio.currentTime + (isRight ? 0.12 : 0.5));
    } catch {
      // no sound here: word and shape have said it
    }
  });
}
