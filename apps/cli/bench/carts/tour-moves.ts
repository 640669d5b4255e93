import { type TourMoves, planTour, usualAllocationWork, verifyTour } from '#cart-allocation';
import { seededRandom } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { clockFrom, numberFrom, readArguments, say } from '../arguments.js';
import { makeFleet } from './made-fleet.js';

/** A move at the dock costs as much as three in the depot (common practice, no published source). */
const dockWeight = 3;

/** A made floor, and shows whose loads are those of its case, some left out, some with another top box. */
function madeTour(carts: number, shows: number, seed: number): TourMoves {
  const fleet = makeFleet(carts, seed);
  const random = seededRandom(31 * seed + shows);
  const models = [...new Set(Object.values(fleet.boxes))];
  const most = Math.max(2, Math.floor(fleet.loads.length * 0.8));
  return {
    floor: fleet,
    shows: Array.from({ length: shows }, (_, show) => ({
      id: `S${show + 1}`,
      weight: show === 0 ? 1 : dockWeight,
      loads: [...fleet.loads]
        .sort(() => random() - 0.5)
        .slice(0, most)
        .map(({ id, boxes }) => ({
          id: `S${show + 1} ${id}`,
          boxes: boxes.map((box, place) =>
            place === 0 && random() < 0.15 ? { model: models[Math.floor(random() * models.length)]! } : box,
          ),
        })),
    })),
  };
}

/** Seeded tours planned as a whole, show by show, and what none costs less than: [--shows 5,10] [--carts N] [--tours N] [--tries N] [--seconds S] [--clock processor]. */
export async function run(args: readonly string[]): Promise<number> {
  const values = readArguments(args);
  const { clock, now } = clockFrom(values.get('clock'));
  const [carts, tours] = [numberFrom(values, 'carts', 24), numberFrom(values, 'tours', 3)];
  const [tries, timeLimitSeconds] = [numberFrom(values, 'tries', 200), numberFrom(values, 'seconds', 60)];
  const integerProgram = await loadIntegerProgramSolver();
  let wrong = 0;
  say(' shows  seed  show by show  as a whole  bound  tries  seconds');
  const summary = (values.get('shows') ?? '5,10,20').split(',').map((each) => {
    const shows = Number(each);
    const sums = { shows, tours: 0, showByShow: 0, whole: 0, bound: 0, proved: 0, infeasible: 0 };
    for (let seed = 1; seed <= tours; seed++) {
      const tour = madeTour(carts, shows, seed);
      const begun = now();
      const plan = planTour(tour, { integerProgram, workPerShow: usualAllocationWork / 20, tries, timeLimitSeconds, now });
      const seconds = (now() - begun) / 1000;
      if (plan.status === 'infeasible') {
        sums.infeasible++;
        continue;
      }
      const [fault] = verifyTour(tour, plan);
      wrong += fault ? 1 : 0;
      sums.tours++;
      sums.showByShow += plan.showByShow;
      sums.whole += plan.cost;
      sums.bound += plan.bound;
      sums.proved += plan.status === 'optimal' ? 1 : 0;
      const cells = [shows, seed, plan.showByShow, plan.cost, Math.ceil(plan.bound - 1e-3), plan.tries, seconds.toFixed(1)];
      say(
        `${cells.map((cell, index) => String(cell).padStart([6, 6, 14, 12, 7, 7, 9][index]!)).join('')}${fault ? `  WRONG ${fault}` : ''}`,
      );
    }
    return { ...sums, bound: Math.round(sums.bound) };
  });
  say(JSON.stringify({ clock, carts, tours: summary, wrong }));
  return wrong === 0 ? 0 : 1;
}
