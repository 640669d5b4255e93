import type { PackPlan } from '../contract/index.js';

/** What changed from one revision to the next: in words, and place by place for the drawings. */
export interface PlanDifference {
  readonly sentences: readonly string[];
  /** Boxes that are not what they were; null where there was or is none. */
  readonly boxes: readonly { readonly hang: string; readonly position: number; readonly from: string | null; readonly to: string | null }[];
  readonly hangsChanged: readonly string[];
}

export function differenceBetween(from: PackPlan, to: PackPlan): PlanDifference {
  const boxes = boxChanges(from, to);
  const sentences = [
    ...hangSentences(from, to),
    ...boxes.map((each) => boxSentence(each)),
    ...cartSentences(from, to),
    ...pickSentences(from, to),
    ...hardwareSentences(from, to),
    ...truckSentences(from, to),
    ...dueSentences(from, to),
  ];
  const changed = new Set([
    ...boxes.map((each) => each.hang),
    ...hangNames(from, to).filter((hang) => designOf(from, hang) !== designOf(to, hang)),
  ]);
  return { sentences, boxes, hangsChanged: [...changed] };
}

const hangNames = (from: PackPlan, to: PackPlan): string[] => [
  ...new Set([...from.picks.hangs, ...to.picks.hangs].map((each) => each.hang)),
];
const hangOf = (plan: PackPlan, hang: string) => plan.picks.hangs.find((each) => each.hang === hang);
const designOf = (plan: PackPlan, hang: string): string => {
  const found = hangOf(plan, hang);
  return found
    ? JSON.stringify([
        found.tiltDownDeg,
        found.trimHeightMm,
        found.picks.map((each) => each.hole),
        found.boxes.map((each) => [each.model, each.splayDeg]),
      ])
    : '';
};

function hangSentences(from: PackPlan, to: PackPlan): string[] {
  return hangNames(from, to).flatMap((name) => {
    const [before, after] = [hangOf(from, name), hangOf(to, name)];
    if (!before) return [`${name} is new: ${after!.boxes.length} boxes.`];
    if (!after) return [`${name} is no longer flown.`];
    const sentences: string[] = [];
    if (before.boxes.length !== after.boxes.length)
      sentences.push(`${name} has ${after.boxes.length} boxes instead of ${before.boxes.length}.`);
    if (round(before.tiltDownDeg) !== round(after.tiltDownDeg))
      sentences.push(`${name} is tilted ${round(after.tiltDownDeg)}° instead of ${round(before.tiltDownDeg)}°, nose down.`);
    if (before.trimHeightMm !== after.trimHeightMm)
      sentences.push(`${name} hangs at ${after.trimHeightMm} mm instead of ${before.trimHeightMm} mm.`);
    after.boxes.forEach((box, index) => {
      const old = before.boxes[index];
      if (old && old.splayDeg !== box.splayDeg)
        sentences.push(`${name} position ${box.position}: splay ${box.splayDeg}° instead of ${old.splayDeg}°.`);
      if (old && old.model !== box.model) sentences.push(`${name} position ${box.position}: ${box.model} instead of ${old.model}.`);
    });
    return sentences;
  });
}

function boxChanges(from: PackPlan, to: PackPlan): { hang: string; position: number; from: string | null; to: string | null }[] {
  return hangNames(from, to).flatMap((hang) => {
    const [before, after] = [hangOf(from, hang)?.boxes ?? [], hangOf(to, hang)?.boxes ?? []];
    return Array.from({ length: Math.max(before.length, after.length) }, (_, index) => ({
      hang,
      position: index + 1,
      from: before[index]?.serial ?? null,
      to: after[index]?.serial ?? null,
    })).filter((each) => each.from !== each.to);
  });
}

function boxSentence({ hang, position, from, to }: { hang: string; position: number; from: string | null; to: string | null }): string {
  const place = `${hang} position ${position}`;
  if (from === null) return `${place}: ${to} comes in.`;
  return to === null ? `${place}: ${from} comes out.` : `${place}: ${to} instead of ${from}.`;
}

function cartSentences(from: PackPlan, to: PackPlan): string[] {
  const before = new Map(from.carts.loads.map((each) => [each.id, each.cart]));
  return to.carts.loads
    .filter((each) => before.has(each.id) && before.get(each.id) !== each.cart)
    .map((each) => `${each.id} rides in ${each.cart ?? 'no cart'} instead of ${before.get(each.id) ?? 'no cart'}.`);
}

function pickSentences(from: PackPlan, to: PackPlan): string[] {
  return to.picks.hangs.flatMap((hang) =>
    hang.picks.flatMap((pick) => {
      const old = hangOf(from, hang.hang)?.picks.find((each) => each.hole === pick.hole);
      if (!old) return [`${hang.hang} is picked at hole ${pick.hole}: ${kilograms(pick.hookLoadKg)} at the hook.`];
      const sentences: string[] = [];
      if (Math.abs(old.hookLoadKg - pick.hookLoadKg) >= 0.5)
        sentences.push(
          `${hang.hang} hole ${pick.hole}: ${kilograms(pick.hookLoadKg)} at the hook instead of ${kilograms(old.hookLoadKg)}.`,
        );
      if (old.hoistSerial !== pick.hoistSerial)
        sentences.push(`${hang.hang} hole ${pick.hole}: hoist ${pick.hoistSerial ?? 'not found'} instead of ${old.hoistSerial ?? 'none'}.`);
      return sentences;
    }),
  );
}

function hardwareSentences(from: PackPlan, to: PackPlan): string[] {
  const before = new Map(from.hardware.lines.map((each) => [each.key, each]));
  return to.hardware.lines.flatMap((line) => {
    const old = before.get(line.key);
    const sum = (each: { loose: number; spares: number }) => each.loose + each.spares;
    if (!old) return [`${line.item} (${line.model}) is new: ${line.fitted} fitted.`];
    if (old.fitted === line.fitted && sum(old) === sum(line)) return [];
    return [
      `${line.item} (${line.model}): ${line.fitted} fitted and ${sum(line)} loose with spares, instead of ${old.fitted} and ${sum(old)}.`,
    ];
  });
}

function truckSentences(from: PackPlan, to: PackPlan): string[] {
  const places = (plan: PackPlan) =>
    new Map(
      plan.truck.trucks.flatMap((truck) =>
        truck.rows.flatMap((row) => row.pieces.map((piece) => [piece, `${truck.id} row ${row.number}`] as const)),
      ),
    );
  const [before, after] = [places(from), places(to)];
  return [
    ...[...after].filter(([piece]) => !before.has(piece)).map(([piece, place]) => `${piece} rides in ${place}; it did not travel before.`),
    ...[...after]
      .filter(([piece, place]) => before.has(piece) && before.get(piece) !== place)
      .map(([piece, place]) => `${piece} stands in ${place} instead of ${before.get(piece)}.`),
    ...[...before].filter(([piece]) => !after.has(piece)).map(([piece]) => `${piece} no longer travels.`),
  ];
}

function dueSentences(from: PackPlan, to: PackPlan): string[] {
  const before = new Map(from.due.items.map((each) => [each.item, each]));
  return to.due.items
    .filter((each) => before.has(each.item) && before.get(each.item)!.state !== each.state)
    .map((each) => `${each.item}: ${each.state} instead of ${before.get(each.item)!.state}.`);
}

const round = (value: number): number => Math.round(value * 100) / 100;
const kilograms = (value: number): string => `${Math.round(value)} kg`;
