import { seededRandom } from '#kernel';
import { type HangCase, makeHangCase, solveHang, verifyHang } from '#hang-statics';

const g = 9.80665;

/** A hang of 1 to 40 boxes with splays, extras and two picks in either order. */
function hangOf(random: () => number): HangCase {
  const between = (low: number, high: number) => low + random() * (high - low);
  const boxes = 1 + Math.floor(random() * 40);
  const front = between(-300, 100);
  const holes = [
    { hole: 'front', behindMm: front, aboveMm: between(60, 200) },
    { hole: 'rear', behindMm: front + between(300, 1200), aboveMm: between(60, 200) },
  ];
  const made = makeHangCase({
    gravityMps2: g,
    dynamicFactor: between(1, 2),
    tiltDownDeg: between(-6, 10),
    grid: { massKg: between(20, 180), cgBehindMm: between(50, 600), cgAboveMm: between(-20, 150), holes },
    boxes: Array.from({ length: boxes }, () => ({
      massKg: between(8, 120),
      frontHeightMm: between(150, 450),
      cgBehindMm: between(80, 380),
      cgBelowMm: between(60, 220),
      rearLeverMm: between(250, 700),
      splayDeg: Math.floor(between(0, 11)) / 2,
    })),
    extras: [{ position: Math.floor(random() * (boxes + 1)), massKg: between(0, 30) }],
    picks: (random() < 0.5 ? ['front', 'rear'] : ['rear', 'front']).map((hole) => ({
      hole,
      belowHookKg: between(0, 8),
      hoistKg: between(20, 90),
      chainKg: between(5, 40),
    })),
  });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}

const turned = (problem: HangCase): HangCase => ({
  ...problem,
  tiltDownDeg: -problem.tiltDownDeg!,
  grid: {
    ...problem.grid,
    cgBehindMm: -problem.grid.cgBehindMm,
    holes: problem.grid.holes.map((hole) => ({ ...hole, behindMm: -hole.behindMm })),
  },
  boxes: problem.boxes.map((box) => ({ ...box, cgBehindMm: -box.cgBehindMm, splayDeg: -box.splayDeg })),
});

describe('ten thousand random hangs', () => {
  it('obey the laws: balance, sum of reactions, mirror, slack tilts, and one pick where the other carries nothing', () => {
    const random = seededRandom(20_261_125);
    for (let count = 0; count < 10_000; count++) {
      const problem = hangOf(random);
      const answer = solveHang(problem);
      const weightN = answer.massKg * g;
      const near = (a: number, b: number) => Math.abs(a - b) <= 1e-8 * weightN;
      const wrong: string[] = [...verifyHang(problem, answer)];
      const holds = (law: string, is: boolean) => {
        if (!is) wrong.push(law);
      };
      holds('the reactions sum to the weight', near(answer.picks[0]!.reactionN + answer.picks[1]!.reactionN, weightN));
      const other = solveHang(turned(problem));
      holds(
        'seen from the other side the picks carry the same',
        answer.picks.every((pick, index) => near(pick.reactionN, other.picks[index]!.reactionN)),
      );
      const { rearSlack } = answer.slackAtDeg!;
      const front = problem.picks.findIndex((pick) => pick.hole === 'front');
      const single = solveHang({ ...problem, tiltDownDeg: undefined, picks: [problem.picks[front]!] });
      holds('one pick rests where the other goes slack', Math.abs(single.tiltDownDeg - rearSlack) < 1e-8);
      if (Math.abs(rearSlack) < 80) {
        const there = solveHang({ ...problem, tiltDownDeg: rearSlack });
        holds('at the slack tilt the rear pick carries nothing', near(there.picks[1 - front]!.reactionN, 0));
        holds('and the front pick everything', near(there.picks[front]!.reactionN, single.picks[0]!.reactionN));
      }
      if (wrong.length > 0) throw new Error(`hang ${count}: ${wrong.join('; ')}`);
    }
  });

  it('are not changed by moving holes, grid and boxes together while everything hangs straight', () => {
    const random = seededRandom(7);
    for (let count = 0; count < 10_000; count++) {
      const problem = { ...hangOf(random), tiltDownDeg: 0 };
      const straight = { ...problem, boxes: problem.boxes.map((box) => ({ ...box, splayDeg: 0 })) };
      const by = (random() - 0.5) * 1000;
      const moved: HangCase = {
        ...straight,
        grid: {
          ...straight.grid,
          cgBehindMm: straight.grid.cgBehindMm + by,
          holes: straight.grid.holes.map((hole) => ({ ...hole, behindMm: hole.behindMm + by })),
        },
        boxes: straight.boxes.map((box) => ({ ...box, cgBehindMm: box.cgBehindMm + by })),
      };
      const [a, b] = [solveHang(straight), solveHang(moved)];
      const off = Math.abs(a.picks[0]!.reactionN - b.picks[0]!.reactionN);
      if (!(off <= 1e-8 * a.massKg * g)) throw new Error(`hang ${count}: off by ${off} N`);
    }
  });
});
