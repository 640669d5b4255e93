import type { HardwareCount, HardwareInput } from './count-hardware.js';

/** Counts again, piece by piece; what does not agree, one sentence each. */
export function verifyHardware(input: HardwareInput, count: HardwareCount): readonly string[] {
  const wrong: string[] = [];
  const fitted: Record<string, number> = {};
  for (const use of input.uses) for (let n = 0; n < use.count; n++) fitted[use.model] = (fitted[use.model] ?? 0) + 1;
  for (const [model, expected] of Object.entries(fitted)) {
    const lines = count.lines.filter((line) => line.model === model);
    if (lines.length !== 1) {
      wrong.push(`${model} stands in ${lines.length} lines`);
      continue;
    }
    const line = lines[0]!;
    if (line.fitted !== expected) wrong.push(`${model}: ${line.fitted} fitted, counted ${expected}`);
    if (line.withBox + line.withCart + line.loose !== line.fitted) wrong.push(`${model}: what travels is not what is fitted`);
    let stock = 0;
    for (const lot of input.stock) if (lot.model === model) stock += lot.count;
    if (line.missing !== Math.max(0, expected + line.spares - stock))
      wrong.push(`${model}: ${line.missing} missing does not follow from fitted, spares and stock`);
    const setting = input.spares.find((each) => each.model === model);
    if (setting?.stopsAShow && line.spares < 1) wrong.push(`${model} stops a show but has no spare`);
    if (line.spares < (input.jointSet.get(model) ?? 0) * input.hangs) wrong.push(`${model}: fewer spares than one joint set for each hang`);
    if (setting && line.levelReached !== null && line.levelReached < setting.level - 1e-9)
      wrong.push(`${model}: the level ${setting.level} is not reached`);
  }
  return wrong;
}
