import { useEffect, useState } from 'react';

/** `not here`: this browser has no such thing, or the page did not come over TLS; `not now`: the device says no, as with an empty battery. */
export type Awake = 'awake' | 'not here' | 'not now';

/** The screen stays lit while this is shown (Screen Wake Lock); asked again whenever the page comes back into sight, which ends it. */
export function useAwake(): Awake {
  const [awake, setAwake] = useState<Awake>('wakeLock' in navigator ? 'awake' : 'not here');
  useEffect(() => {
    if (!('wakeLock' in navigator)) return;
    let held: WakeLockSentinel | undefined;
    let isGone = false;
    const hold = async () => {
      if (document.visibilityState !== 'visible' || isGone) return;
      try {
        const lock = await navigator.wakeLock.request('screen');
        if (isGone) return void lock.release();
        held = lock;
        lock.addEventListener('release', () => {
          // Out of sight it ends by itself; in sight the device took it back.
          if (!isGone && document.visibilityState === 'visible') setAwake('not now');
        });
        setAwake('awake');
      } catch {
        if (!isGone) setAwake('not now');
      }
    };
    const seen = () => void hold();
    seen();
    document.addEventListener('visibilitychange', seen);
    return () => {
      isGone = true;
      document.removeEventListener('visibilitychange', seen);
      void held?.release();
    };
  }, []);
  return awake;
}
