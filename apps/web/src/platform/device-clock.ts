/** Less than this is a slow answer or a clock that nobody minds, milliseconds. */
const mindedMs = 5 * 60_000;

let aheadMs = 0;
const listeners = new Set<() => void>();

/** Every answer of the house says what time it is there; to the second. */
export function noteHouseTime(date: string | null, now: number): void {
  const house = Date.parse(date ?? '');
  if (Number.isNaN(house)) return;
  const next = Math.abs(now - house) < mindedMs ? 0 : now - house;
  // A second more or less is not told again.
  if (Math.abs(next - aheadMs) < 60_000 && (next === 0) === (aheadMs === 0)) return;
  aheadMs = next;
  for (const each of listeners) each();
}

/** Now by the clock of the house, as far as this device has heard it; else by its own. */
export const houseNow = (): Date => new Date(Date.now() - aheadMs);

/** What is wrong with the clock of this device, as a sentence; null: nothing that the house has told. */
export const clockSentence = (ahead: number): string | null =>
  ahead === 0
    ? null
    : `The clock of this device is ${spanOf(Math.abs(ahead))} ${ahead > 0 ? 'ahead of' : 'behind'} that of the house. What you do is taken all the same, with both times on record; set the clock of the device.`;

function spanOf(ms: number): string {
  for (const [unit, length] of [
    ['day', 86_400_000],
    ['hour', 3_600_000],
  ] as const)
    if (ms >= length) return counted(Math.round(ms / length), unit);
  return counted(Math.round(ms / 60_000), 'minute');
}

const counted = (count: number, unit: string): string => `${count} ${unit}${count === 1 ? '' : 's'}`;

/** Told of every change; gives what ends that. */
export function onClock(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const clockAheadMs = (): number => aheadMs;
