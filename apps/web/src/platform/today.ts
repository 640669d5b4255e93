import { houseNow } from './device-clock.js';
import { dayOf } from './written.js';

/** The day that it is where this device is; a clock that is days off is put right by what the house said. */
export const today = (): string => dayOf(houseNow());
