import type { Checking } from './checking.js';

/** Everything planned that a rule wants examined is judged, what is not in date says stop, and everything planned is booked. */
export function checkDue({ file, items, plan, wrong }: Checking): void {
  const booked = new Set(plan.uses.map((each) => each.item));
  const planned = [
    ...plan.carts.loads.flatMap((load) => [load.cart, ...load.boxes.map((box) => box.serial)]),
    ...plan.hardware.chosen.map((each) => each.item),
    ...plan.truck.trucks.flatMap((truck) => [truck.id, ...truck.placements.map((each) => each.id)]),
  ].filter((each) => each !== null);
  for (const id of planned) if (!booked.has(id)) wrong('bookings', id, 'it is planned and would not be booked');
  const rules = rulesOfTour(file);
  const judged = new Map(plan.due.items.map((each) => [each.item, each]));
  for (const id of booked) {
    const item = items.get(id);
    if (!item) {
      wrong('dates', id, 'it is not on file');
      continue;
    }
    if (
      (item.intervals ?? rules.filter(({ kinds, intervals }) => kinds.includes(item.kind) && intervals.length > 0)).length > 0 &&
      !judged.has(id)
    )
      wrong('dates', id, 'a rule wants it examined and nothing judges it');
  }
  for (const each of plan.due.items) {
    if (!booked.has(each.item) || each.state === 'in date throughout' || each.state === 'falls due') continue;
    if (!plan.findings.some((finding) => finding.section === 'due' && finding.weight === 'stop' && finding.subject === each.item))
      wrong('dates', each.item, `it is ${each.state}, planned, and nothing says stop`);
  }
}

/** Of the places visited, and where one has none, of the place that the safety officer named instead. */
function rulesOfTour({ tour, examinationRules }: Checking['file']): Checking['file']['examinationRules'] {
  const of = (place: string) =>
    examinationRules.filter(({ jurisdiction }) => place === jurisdiction || place.startsWith(`${jurisdiction}-`));
  return tour.jurisdictions.flatMap((place) => {
    const own = of(place);
    const answer = (tour.placeAnswers ?? []).find((each) => each.place === place);
    return answer && !own.some((each) => each.intervals.length > 0 && each.check === undefined) ? [...own, ...of(answer.rulesOf)] : own;
  });
}
