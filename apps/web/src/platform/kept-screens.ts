import { useEffect, useState } from 'react';

/** Why the screens do not open without a network, or that they do. */
export type KeptScreens = 'kept' | 'on its way' | 'no trusted address' | 'not by this browser';

/** Has the browser keep the screens on this device, and what is done on them, until its owner clears it. */
export async function keepScreens(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  await navigator.serviceWorker.register('/service-worker.js');
  await navigator.storage?.persist?.();
}

export function useKeptScreens(): KeptScreens {
  const [isReady, setIsReady] = useState(false);
  useEffect(() => {
    let isHere = true;
    void navigator.serviceWorker?.ready.then(() => isHere && setIsReady(true));
    return () => {
      isHere = false;
    };
  }, []);
  if (!isSecureContext) return 'no trusted address';
  if (!('serviceWorker' in navigator)) return 'not by this browser';
  return isReady ? 'kept' : 'on its way';
}
