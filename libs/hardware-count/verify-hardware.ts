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
    const rides = { 'with its box': 0, 'with its cart': 0, loose: 0 };
    for (const each of input.travelling) if (each.key === key) rides[each.travels] += each.count;
    const rolling = rides['with its box'] + rides['with its cart'] + rides.loose;
    for (const [what, said, counted] of [
      ['with its box', line.withBox, rides['with its box']],
      ['with its cart', line.withCart, rides['with its cart']],
      ['loose', line.loose, rides.loose],
      ['staying', line.staysInBox, addedUp(input.staying, key)],
      ['spares', line.spares, input.spares.get(key) ?? 0],
      ['kept at home', line.keptAtHome, input.keptAtHome.get(key) ?? 0],
      ['on hand', line.onHand, Math.min(...days.map((day) => freeOn(input, key, day)))],
    ] as const)
      if (said !== counted) wrong.push(`${key}: ${said} ${what}, counted ${counted}`);
    if (rolling !== line.fitted + line.staysInBox + line.difference) wrong.push(`${key}: travelling and flown are not reconciled`);
    let worst = 0;
    for (const day of days) worst = Math.max(worst, rolling + line.spares - stockOn(input, key, day));
    if (line.missing !== worst) wrong.push(`${key}: ${line.missing} missing, counted ${worst}`);
    if (line.missing > 0 !== (line.shortOn !== null)) wrong.push(`${key}: missing without a day, or a day without anything missing`);
    const shortDays = days.filter((day) => rolling + line.spares > stockOn(input, key, day));
    if (line.shortOn && (line.shortOn.from !== shortDays[0] || line.shortOn.to !== shortDays.at(-1)))
      wrong.push(`${key}: short from ${line.shortOn.from} to ${line.shortOn.to}, counted ${shortDays[0]} to ${shortDays.at(-1)}`);
    let taken = 0;
    for (const each of line.takenFrom) {
      taken += each.count;
      // A cart that brings several kinds of pieces is a lot of each.
      const lot = input.lots.find((one) => one.id === each.lot && one.key === key);
      if (!lot || each.count < 1 || each.count > lot.count) wrong.push(`${key}: ${each.count} taken from ${each.lot}`);
    }
    if (taken > rolling + line.spares) wrong.push(`${key}: more is taken than is wanted`);
  }
  return wrong;
}

const addedUp = (pieces: readonly { readonly key: string; readonly count: number }[], key: string): number => {
  let total = 0;
  for (const each of pieces) if (each.key === key) total += each.count;
  return total;
};

/** Of every lot, what nobody holds on a day. */
function freeOn(input: HardwareInput, key: string, day: string): number {
  let free = 0;
  for (const lot of input.lots) {
    if (lot.key !== key) continue;
    let held = 0;
    for (const each of lot.promises) if (day >= each.from && day <= each.to) held += each.count;
    if (held < lot.count) free += lot.count - held;
  }
  return free;
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
