import type { PackPlan } from '../contract/index.js';

/** The results of a plan in the shape of format 1: the words, without the data beside them. */
export function printedPlan({ carts, picks, hardware, truck, due, findings }: PackPlan): unknown {
  const { refused, ...rest } = truck;
  const printed = {
    carts: { ...carts, loads: carts.loads.map((load) => ({ ...load, exceptions: load.exceptions.map((each) => each.sentence) })) },
    picks,
    hardware,
    truck: refused ? { ...rest, refused: refused.map((each) => each.sentence) } : rest,
    due,
    findings: findings.map(({ code, weight, section, subject, date, sentence }) => ({ code, weight, section, subject, date, sentence })),
  };
  return JSON.parse(JSON.stringify(printed, (key, value: unknown) => (key === 'fact' ? undefined : value)));
}
