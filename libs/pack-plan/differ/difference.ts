import type { DifferenceFact } from '#trade';
import { type Words, english, tell } from '#words';
import type { PackPlan } from '../contract/index.js';

/** What changed from one revision to the next: as data, in words, and place by place for the drawings. */
export interface PlanDifference {
  readonly sentences: readonly string[];
  readonly facts: readonly DifferenceFact[];
  /** Boxes that are not what they were; null where there was or is none. */
  readonly boxes: readonly { readonly hang: string; readonly position: number; readonly from: string | null; readonly to: string | null }[];
  readonly hangsChanged: readonly string[];
}

export function differenceBetween(from: PackPlan, to: PackPlan, words: Words = english): PlanDifference {
  const boxes = boxChanges(from, to);
  const facts = [
    ...hangFacts(from, to),
    ...boxes.map(
      (each): DifferenceFact => ({
        code: 'box',
        hang: (hangOf(to, each.hang) ?? hangOf(from, each.hang))!.name,
        position: each.position,
        before: each.from,
        after: each.to,
      }),
    ),
    ...cartFacts(from, to),
    ...pickFacts(from, to),
    ...hardwareFacts(from, to),
    ...truckFacts(from, to),
    ...dueFacts(from, to),
  ];
  const changed = new Set([
    ...boxes.map((each) => each.hang),
    ...hangNames(from, to).filter((hang) => designOf(from, hang) !== designOf(to, hang)),
  ]);
  return { sentences: facts.map((each) => tell(words.differences, each)), facts, boxes, hangsChanged: [...changed] };
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
        found.room?.trimTo ?? 'grid',
        found.picks.map((each) => each.hole),
        found.boxes.map((each) => [each.model, each.splayDeg]),
      ])
    : '';
};

function hangFacts(from: PackPlan, to: PackPlan): DifferenceFact[] {
  return hangNames(from, to).flatMap((hang): DifferenceFact[] => {
    const [before, after] = [hangOf(from, hang), hangOf(to, hang)];
    const called = (after ?? before)!.name;
    if (!before) return [{ code: 'hang-new', hang: called, boxes: after!.boxes.length }];
    if (!after) return [{ code: 'hang-gone', hang: called }];
    const facts: DifferenceFact[] = [];
    if (before.boxes.length !== after.boxes.length)
      facts.push({ code: 'hang-length', hang: called, before: before.boxes.length, after: after.boxes.length });
    if (round(before.tiltDownDeg) !== round(after.tiltDownDeg))
      facts.push({ code: 'hang-tilt', hang: called, beforeDeg: before.tiltDownDeg, afterDeg: after.tiltDownDeg });
    if (before.trimHeightMm !== after.trimHeightMm)
      facts.push({ code: 'hang-trim', hang: called, beforeMm: before.trimHeightMm, afterMm: after.trimHeightMm });
    const [markBefore, markAfter] = [before.room?.trimTo ?? 'grid', after.room?.trimTo ?? 'grid'];
    if (markBefore !== markAfter) facts.push({ code: 'hang-trim-to', hang: called, before: markBefore, after: markAfter });
    after.boxes.forEach(({ position, splayDeg, model }, index) => {
      const old = before.boxes[index];
      if (old && old.splayDeg !== splayDeg)
        facts.push({ code: 'splay', hang: called, position, beforeDeg: old.splayDeg, afterDeg: splayDeg });
      if (old && old.model !== model) facts.push({ code: 'box-model', hang: called, position, before: old.model, after: model });
    });
    return facts;
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

function cartFacts(from: PackPlan, to: PackPlan): DifferenceFact[] {
  const before = new Map(from.carts.loads.map((each) => [each.id, each.cart]));
  return to.carts.loads
    .filter((each) => before.has(each.id) && before.get(each.id) !== each.cart)
    .map((each) => ({ code: 'cart', load: each.id, before: before.get(each.id) ?? null, after: each.cart }));
}

function pickFacts(from: PackPlan, to: PackPlan): DifferenceFact[] {
  return to.picks.hangs.flatMap(({ hang, name, picks }) =>
    picks.flatMap(({ hole, hookLoadKg, hoistSerial }): DifferenceFact[] => {
      const old = hangOf(from, hang)?.picks.find((each) => each.hole === hole);
      if (!old) return [{ code: 'pick-new', hang: name, hole, hookLoadKg }];
      return [
        ...(Math.abs(old.hookLoadKg - hookLoadKg) >= 0.5
          ? [{ code: 'hook-load' as const, hang: name, hole, beforeKg: old.hookLoadKg, afterKg: hookLoadKg }]
          : []),
        ...(old.hoistSerial !== hoistSerial
          ? [{ code: 'hoist' as const, hang: name, hole, before: old.hoistSerial, after: hoistSerial }]
          : []),
      ];
    }),
  );
}

function hardwareFacts(from: PackPlan, to: PackPlan): DifferenceFact[] {
  const lines = new Map(from.hardware.lines.map((each) => [each.key, each]));
  const countsOf = ({ fitted, loose, spares }: { fitted: number; loose: number; spares: number }) => ({
    fitted,
    looseWithSpares: loose + spares,
  });
  return to.hardware.lines.flatMap((line): DifferenceFact[] => {
    const { item, model, fitted } = line;
    const old = lines.get(line.key);
    if (!old) return [{ code: 'line-new', item, model, fitted }];
    const [before, after] = [countsOf(old), countsOf(line)];
    const isSame = before.fitted === after.fitted && before.looseWithSpares === after.looseWithSpares;
    return isSame ? [] : [{ code: 'line-count', item, model, before, after }];
  });
}

function truckFacts(from: PackPlan, to: PackPlan): DifferenceFact[] {
  const places = (plan: PackPlan) =>
    new Map(
      plan.truck.trucks.flatMap((truck) =>
        truck.rows.flatMap((row) => row.pieces.map((piece) => [piece, { truck: truck.id, row: row.number }] as const)),
      ),
    );
  const [before, after] = [places(from), places(to)];
  return [
    ...[...after].filter(([piece]) => !before.has(piece)).map(([piece, place]) => ({ code: 'piece-new' as const, piece, ...place })),
    ...[...after].flatMap(([piece, now]): DifferenceFact[] => {
      const then = before.get(piece);
      return then && (then.truck !== now.truck || then.row !== now.row) ? [{ code: 'piece-moved', piece, before: then, after: now }] : [];
    }),
    ...[...before].filter(([piece]) => !after.has(piece)).map(([piece]) => ({ code: 'piece-gone' as const, piece })),
  ];
}

function dueFacts(from: PackPlan, to: PackPlan): DifferenceFact[] {
  const states = new Map(from.due.items.map((each) => [each.item, each.state]));
  return to.due.items.flatMap(({ item, state: after }): DifferenceFact[] => {
    const before = states.get(item);
    return before === undefined || before === after ? [] : [{ code: 'due-state', item, before, after }];
  });
}

const round = (value: number): number => Math.round(value * 100) / 100;
