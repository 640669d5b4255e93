import { useSyncExternalStore } from 'react';
import { clockAheadMs, clockSentence, onClock } from './device-clock.js';

/** What is wrong with the clock of this device; null: nothing that the house has told. */
export const useClockSentence = (): string | null => clockSentence(useSyncExternalStore(onClock, clockAheadMs));
