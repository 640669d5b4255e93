import type { SpareLine, SparesPlan } from './plan-spares.js';

/** Adds up the probability terms one by one, in logarithms, and judges a plan of spares by them; what does not hold, one sentence each. */
export function verifySpares(lines: readonly SpareLine[], plan: SparesPlan): readonly string[] {
  const wrong: string[] = [];
  let together = 1;
  let weight = 0;
  lines.forEach((line, index) => {
    const answer = plan.lines[index]!;
    if (answer.key !== line.key) wrong.push(`line ${index} is ${answer.key}, not ${line.key}`);
    if (line.stopsAShow && answer.spares < 1) wrong.push(`${line.key} stops a show but has no spare`);
    if (answer.spares < line.fullSets) wrong.push(`${line.key}: fewer spares than one joint set for each hang`);
    if (line.knowledge === null) {
      if (answer.levelReached !== null) wrong.push(`${line.key}: a level without known losses`);
      return;
    }
    if (line.weight) weight += line.weight * answer.spares;
    let uses = 0;
    for (const cell of line.cells) uses += cell.pieceUses;
    const level = chanceOfAtMost(line.knowledge, uses, answer.spares);
    together *= level;
    const mean = meanOf(line.knowledge, uses);
    if (Math.abs(mean - answer.mean!) > 1e-9 * (1 + mean)) wrong.push(`${line.key}: ${answer.mean} losses expected, counted ${mean}`);
    if (Math.abs(level - answer.levelReached!) > 1e-9) wrong.push(`${line.key}: level ${answer.levelReached}, summed ${level}`);
    if (line.level !== null && level < line.level - 1e-9) wrong.push(`${line.key}: the level ${line.level} is not reached`);
  });
  const { trunk } = plan;
  if (trunk.level !== null && Math.abs(trunk.level - together) > 1e-9)
    wrong.push(`all lines together: ${trunk.level}, multiplied ${together}`);
  if (trunk.wanted !== null && trunk.level !== null && together < trunk.wanted - 1e-9) wrong.push('the level of the trunk is not reached');
  if (Math.abs(trunk.weight - weight) > 1e-9 * (1 + weight)) wrong.push(`the spares weigh ${weight}, not ${trunk.weight}`);
  if (trunk.bound > trunk.weight * (1 + 1e-12)) wrong.push('the bound is above what was found');
  if (trunk.weight > trunk.equalShareWeight * (1 + 1e-12)) wrong.push('equal shares of the level would be lighter');
  if (trunk.status === 'optimal' && Math.abs(trunk.bound - trunk.weight) > 1e-9 * (1 + weight))
    wrong.push('called least without a bound that meets it');
  return wrong;
}

const meanOf = (knowledge: NonNullable<SpareLine['knowledge']>, uses: number): number =>
  'lossPerUse' in knowledge
    ? uses * knowledge.lossPerUse
    : (uses * (knowledge.prior.losses + (knowledge.counted?.losses ?? 0))) / (knowledge.prior.uses + (knowledge.counted?.uses ?? 0));

function chanceOfAtMost(knowledge: NonNullable<SpareLine['knowledge']>, uses: number, spares: number): number {
  if (uses === 0) return 1;
  if ('lossPerUse' in knowledge) {
    const mean = uses * knowledge.lossPerUse;
    return mean === 0 ? 1 : sumOfTerms(-mean, (k) => Math.log(mean / k), spares);
  }
  const shape = knowledge.prior.losses + (knowledge.counted?.losses ?? 0);
  const rate = knowledge.prior.uses + (knowledge.counted?.uses ?? 0);
  return sumOfTerms(shape * Math.log(rate / (rate + uses)), (k) => Math.log(((shape + k - 1) / k) * (uses / (rate + uses))), spares);
}

function sumOfTerms(first: number, step: (k: number) => number, last: number): number {
  let log = first;
  let total = Math.exp(log);
  for (let k = 1; k <= last; k++) {
    log += step(k);
    total += Math.exp(log);
  }
  return total;
}
