import { canonicalJson } from '#kernel';
import { type Design, type Hang, type Show, hangName } from '../shapes/index.js';

/** How a hang of a show is not as its design has it. */
export interface Difference {
  readonly hang: string;
  readonly name: string;
  readonly how: 'added' | 'left out' | 'changed';
  /** Of a changed one: the fields of the hang that are not as in the design. */
  readonly fields: readonly (keyof Hang)[];
}

export const same = (one: unknown, other: unknown): boolean => canonicalJson(one ?? null) === canonicalJson(other ?? null);

/** The fields that two hangs have different, in the order in which they stand there. */
export const fieldsBetween = (one: Hang, other: Hang): (keyof Hang)[] =>
  ([...new Set([...Object.keys(one), ...Object.keys(other)])] as (keyof Hang)[]).filter((field) => !same(one[field], other[field]));

/** What differs at a show from the design that it follows: in the order of its hangs, then what it leaves out. */
export function differences(show: Pick<Show, 'hangs'>, design: Design): readonly Difference[] {
  const own = show.hangs.flatMap((hang): Difference[] => {
    const of = design.hangs.find((each) => each.id === hang.id);
    const named = { hang: hang.id, name: hangName(hang) };
    if (!of) return [{ ...named, how: 'added', fields: [] }];
    const fields = fieldsBetween(hang, of);
    return fields.length === 0 ? [] : [{ ...named, how: 'changed', fields }];
  });
  const left = design.hangs.filter((each) => !show.hangs.some((hang) => hang.id === each.id));
  return [...own, ...left.map((each): Difference => ({ hang: each.id, name: hangName(each), how: 'left out', fields: [] }))];
}
