import { useEffect, useRef } from 'react';
import { keyReader } from '#pack-plan';

/** What a reader that types sends while no field has the focus; its Enter presses nothing. */
export function useReader(onCode: (code: string) => void): void {
  const latest = useRef(onCode);
  useEffect(() => {
    latest.current = onCode;
  });
  useEffect(() => {
    const read = keyReader();
    const hear = (event: KeyboardEvent) => {
      if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return;
      const code = read(event.key, event.timeStamp);
      if (code === null) return;
      event.preventDefault();
      latest.current(code);
    };
    addEventListener('keydown', hear, { capture: true });
    return () => removeEventListener('keydown', hear, { capture: true });
  }, []);
}
