import type { Hang } from './tour.js';

/** What people call a hang: its name, or its id where it has none. Nothing is looked up by it. */
export const hangName = ({ id, name }: Pick<Hang, 'id' | 'name'>): string => name ?? id;
