import { readFileSync } from 'node:fs';
import { loadIntegerProgramSolver } from '#runtime';
import { seededRandom } from '#kernel';
import { readTourFile } from '#tour-file';
import { type HardwareLine, makePackPlan } from '#pack-plan';

const tours = 100_000;
const legs = 12;
/** Two-sided, one comparison in a thousand wrong by chance; the seed is fixed. */
const widths = 3.2905;

/**
 * A tour of twelve legs played 10^5 times, piece by piece: for every tour the loss per use of a learned line is drawn from its gamma, then the losses of
 * each leg from a Poisson of that leg's pieces. What is counted here (boxes, joints, picks, carts) is counted by hand, not taken from the plan.
 */
describe('the spares of a twelve-leg tour, played a hundred thousand times', () => {
  // Hangs of 24, 24 and 12 boxes: pieces fitted in each leg.
  const pieces: Record<string, number> = {
    'Link pin 12': 120,
    'Link pin 10': 60,
    'Lock pin 8': 60,
    'Bow shackle 3.25': 12,
    'Round sling 1 m': 6,
    'Base pin 12': 60,
    'Loom of four, 20 m': 15,
    // One a hoist, and with the one controller that runs six.
    'Motor cable 20 m': 6,
    'Handset of eight': 1,
    'Emergency stop on 10 m': 1,
  };
  let lines: HardwareLine[];
  let trunkLevel: number;
  let settings: {
    item: string;
    lossPerUse?: number;
    prior?: { losses: number; uses: number };
    counted?: { losses: number; uses: number };
  }[];

  beforeAll(async () => {
    const written = JSON.parse(readFileSync('tests/examples/demo-tour.json', 'utf8'));
    const show = written.tour.shows[0];
    written.tour.returnTo = '2027-04-30';
    written.tour.shows = Array.from({ length: legs }, (_, index) => ({
      ...show,
      id: `leg-${index + 1}`,
      name: `Leg ${index + 1}`,
      from: index === 0 ? '2027-03-04' : `2027-04-${String(index + 1).padStart(2, '0')}`,
      to: index === 0 ? '2027-03-05' : `2027-04-${String(index + 1).padStart(2, '0')}`,
    }));
    // No joint sets in the way, so that the levels are told apart by playing: losses as on a hard tour.
    for (const each of written.tour.spares)
      if (each.prior) Object.assign(each, { prior: { losses: 4, uses: 900 }, counted: { losses: 3, uses: 400 }, stopsAShow: false });
    written.tour.spareTrunk = { level: 0.9, least: 'mass' };
    for (const each of written.tour.spares) delete each.level;
    settings = written.tour.spares;
    const read = readTourFile(written);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const integerProgram = await loadIntegerProgramSolver();
    const plan = makePackPlan(read.value, 'leg-1', { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
    lines = plan.hardware.lines.filter((line) => line.levelReached !== null);
    trunkLevel = plan.hardware.trunk.level!;
  });

  it('run short as often as the levels say, each line and all together, within the confidence interval', () => {
    expect(lines.map((line) => line.key).sort()).toEqual(Object.keys(pieces).sort());
    const random = seededRandom(20270301);
    const enough = new Map(lines.map((line) => [line.key, 0]));
    let allEnough = 0;
    for (let tour = 0; tour < tours; tour++) {
      let short = false;
      for (const line of lines) {
        const setting = settings.find((each) => each.item === line.key)!;
        const rate =
          setting.lossPerUse ??
          drawGamma(random, setting.prior!.losses + setting.counted!.losses) / (setting.prior!.uses + setting.counted!.uses);
        let lost = 0;
        for (let leg = 0; leg < legs; leg++) lost += drawPoisson(random, rate * pieces[line.key]!);
        if (lost <= line.spares) enough.set(line.key, enough.get(line.key)! + 1);
        else short = true;
      }
      if (!short) allEnough += 1;
    }
    for (const line of lines) within(enough.get(line.key)! / tours, line.levelReached!);
    within(allEnough / tours, trunkLevel);
    expect(trunkLevel).toBeGreaterThanOrEqual(0.9);
    // The levels are such that a wrong one would be seen.
    expect(lines.filter((line) => line.levelReached! < 0.9995).length).toBeGreaterThanOrEqual(4);
  });
});

function within(seen: number, level: number): void {
  expect(Math.abs(seen - level)).toBeLessThanOrEqual(widths * Math.sqrt((level * (1 - level)) / tours) + 1e-12);
}

/** Knuth, for the small means of one leg. */
function drawPoisson(random: () => number, mean: number): number {
  const limit = Math.exp(-mean);
  let count = 0;
  for (let product = random(); product > limit; product *= random()) count += 1;
  return count;
}

/** Marsaglia and Tsang (2000), shape of at least 1. */
function drawGamma(random: () => number, shape: number): number {
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}
