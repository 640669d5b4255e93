import type { HardwareCountLine, HardwareInput } from './count-hardware.js';

/** Counts again, piece by piece and day by day; what does not agree, one sentence each. `days`: every day of the dates. */
export function verifyHardware(input: HardwareInput, lines: readonly HardwareCountLine[], days: readonly string[]): readonly string[] {
  const wrong: string[] = [];
  const fitted: Record<string, number> = {};
  for (const each of input.fitted) for (let n = 0; n < each.count; n++) fitted[each.key] = (fitted[each.key] ?? 0) + 1;
  for (const [key, expected] of Object.entries(fitted)) {
    const found = lines.filter((line) => line.key === key);
    if (found.length !== 1) {
      wrong.push(`${key} stands in ${found.length} lines`);
      continue;
    }
    const line = found[0]!;
    if (line.fitted !== expected) wrong.push(`${key}: ${line.fitted} fitted, counted ${expected}`);
    let rolling = 0;
    for (const each of input.travelling) if (each.key === key) rolling += each.count;
    if (line.withBox + line.withCart + line.loose !== rolling) wrong.push(`${key}: what travels is not what rolls out`);
    if (rolling !== line.fitted + line.staysInBox + line.difference) wrong.push(`${key}: travelling and flown are not reconciled`);
    let worst = 0;
    for (const day of days) worst = Math.max(worst, rolling + line.spares - stockOn(input, key, day));
    if (line.missing !== worst) wrong.push(`${key}: ${line.missing} missing, counted ${worst}`);
    if (line.missing > 0 !== (line.shortOn !== null)) wrong.push(`${key}: missing without a day, or a day without anything missing`);
    let taken = 0;
    for (const each of line.takenFrom) taken += each.count;
    if (taken > rolling + line.spares) wrong.push(`${key}: more is taken than is wanted`);
  }
  return wrong;
}

function stockOn(input: HardwareInput, key: string, day: string): number {
  let [inCases, withBoxes, allWithBoxes] = [0, 0, 0];
  for (const lot of input.lots) {
    if (lot.key !== key) continue;
    let held = 0;
    for (const each of lot.promises) if (day >= each.from && day <= each.to) held += each.count;
    const free = held > lot.count ? 0 : lot.count - held;
    if (lot.trunk === null) {
      withBoxes += free;
      allWithBoxes += lot.count;
    } else inCases += free;
  }
  const away = allWithBoxes - (input.keptAtHome.get(key) ?? 0);
  return inCases + Math.max(0, Math.min(withBoxes, away));
}
