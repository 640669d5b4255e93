import type { TruckResultOne } from '../contract/index.js';
import type { Checking } from './checking.js';

/** Every cart of the show and every case of the tour rides once or is left over with a reason; what is placed adds up and stands inside. */
export function checkTrucks(checking: Checking): void {
  const { file, plan, wrong } = checking;
  const { truck } = plan;
  const placed = truck.trucks.flatMap((each) => each.placements.map((piece) => piece.id));
  const all = [...placed, ...truck.leftOver.map((each) => each.id)];
  const travels = [
    ...plan.carts.loads.flatMap((each) => (each.cart === null ? [] : [each.cart])),
    ...file.tour.freight.map((each) => each.case),
  ];
  for (const id of travels) {
    const times = all.filter((each) => each === id).length;
    if (times !== 1) wrong('trucks', id, `it is placed or left over ${times} times`);
  }
  for (const id of all) if (all.indexOf(id) !== all.lastIndexOf(id)) wrong('trucks', id, 'it stands in two places');
  if (truck.leftOver.length > 0 && !plan.findings.some((each) => each.section === 'truck' && each.weight !== 'agrees'))
    wrong('trucks', plan.show.id, 'something is left over and nothing says so');
  for (const each of truck.trucks) checkTruck(checking, each);
}

function checkTruck({ file, wrong }: Checking, truck: TruckResultOne): void {
  if (!file.tour.trucks.includes(truck.id)) wrong('trucks', truck.id, 'it is no truck of the tour');
  const massKg = truck.placements.reduce((sum, each) => sum + each.massKg, 0);
  if (!(Math.abs(massKg - truck.massKg) <= 1e-6 * Math.max(1, massKg)))
    wrong('trucks', truck.id, `${truck.massKg} kg are said, ${massKg} added up`);
  for (const piece of truck.placements) {
    const inside =
      piece.xMm >= 0 &&
      piece.yMm >= 0 &&
      piece.zMm >= 0 &&
      piece.xMm + piece.alongMm <= truck.innerLengthMm &&
      piece.yMm + piece.acrossMm <= truck.innerWidthMm &&
      piece.zMm + piece.heightMm <= truck.innerHeightMm;
    if (!inside) wrong('trucks', piece.id, `it does not stand inside ${truck.id}`);
  }
  const ids = truck.placements.map((each) => each.id).sort();
  for (const [what, order] of Object.entries({ loading: truck.loadingOrder, unloading: truck.unloadingOrder }))
    if ([...order].sort().join('\n') !== ids.join('\n')) wrong('trucks', truck.id, `the ${what} order is not that of what it holds`);
  if ([...truck.rows.flatMap((each) => each.pieces)].sort().join('\n') !== ids.join('\n'))
    wrong('trucks', truck.id, 'its rows do not hold what it holds');
}
