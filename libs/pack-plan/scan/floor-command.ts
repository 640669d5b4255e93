/** What somebody whose gloves do not work glass says with a code on a lanyard. */
export type FloorCommand = 'done' | 'undo' | 'fault';

/** What stands in the codes: letters and a blank alone, which a reader types alike on every keyboard. */
export const commandCodes: Readonly<Record<FloorCommand, string>> = { done: 'FLOOR DONE', undo: 'FLOOR UNDO', fault: 'FLOOR FAULT' };

/** Which of them was read; null: something else, as a serial. */
export function commandOf(read: string): FloorCommand | null {
  const text = read.trim().toUpperCase();
  for (const each of ['done', 'undo', 'fault'] as const) if (commandCodes[each] === text) return each;
  return null;
}
