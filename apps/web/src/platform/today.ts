import { dayOf } from './written.js';

/** The day that it is where this device is. */
export const today = (): string => dayOf(new Date());
