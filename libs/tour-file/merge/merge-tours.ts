import { canonicalJson, mergeEdit } from '#kernel';
import type { Tour } from '../shapes/index.js';

/** A field to which two people gave different values, by its place in the tour as it would be saved; null: it is not there. */
export interface TourClash {
  /** As a fault of a tour names it: shows[2].hangs[0].trimHeightMm; a thing that one changed and the other took out by its list and id. */
  readonly path: string;
  readonly yours: unknown;
  readonly onFile: unknown;
}

type Fields = Readonly<Record<string, unknown>>;
type Keyed = Fields & { readonly id: string };

/** Lists whose entries are known by id, at each depth: their entries are merged one by one. */
const keyed: Readonly<Record<string, readonly string[]>> = { tour: ['shows', 'designs'], shows: ['hangs'], designs: ['hangs'], hangs: [] };
/** Lists of names: what one added and what the other took out both hold. */
const sets = ['trucks', 'visitDays', 'jurisdictions'];

const same = (one: unknown, other: unknown): boolean => canonicalJson(one ?? null) === canonicalJson(other ?? null);

/**
 * A tour that somebody began to change as `was` and wants as `wanted`, laid over what is on file by now: shows, designs and hangs by their id, field by
 * field. What only one of the two changed holds; what both changed to different values is a clash, and nothing is decided.
 */
export function mergeTours(was: Tour, wanted: Tour, now: Tour): { readonly merged: Tour } | { readonly clashes: readonly TourClash[] } {
  const clashes: TourClash[] = [];
  const merged = mergeFields('tour', '', { ...was }, { ...wanted }, { ...now }, clashes);
  return clashes.length > 0 ? { clashes } : { merged: merged as unknown as Tour };
}

function mergeFields(kind: string, at: string, was: Fields, wanted: Fields, now: Fields, clashes: TourClash[]): Fields {
  const lists = keyed[kind] ?? [];
  const apart = (all: Fields): Fields =>
    Object.fromEntries(Object.entries(all).filter(([name]) => !lists.includes(name) && !isSet(kind, name)));
  const edit = mergeEdit(apart(was), apart(wanted), apart(now));
  if ('clashes' in edit)
    for (const { field, yours, onFile } of edit.clashes)
      clashes.push({ path: `${at}${field}`, yours: yours ?? null, onFile: onFile ?? null });
  const merged: Record<string, unknown> = 'merged' in edit ? { ...edit.merged } : { ...apart(wanted) };
  for (const name of kind === 'tour' ? sets : []) merged[name] = mergeSets(was[name], wanted[name], now[name]);
  if (kind === 'tour') merged.freight = mergeFreight(was.freight, wanted.freight, now.freight, clashes);
  for (const name of lists) {
    const list = mergeKeyed(name, at, listOf(was, name), listOf(wanted, name), listOf(now, name), clashes);
    if (list.length > 0 || wanted[name] !== undefined) merged[name] = list;
  }
  return merged;
}

const isSet = (kind: string, name: string): boolean => kind === 'tour' && (sets.includes(name) || name === 'freight');
const listOf = (of: Fields, name: string): readonly Keyed[] => (of[name] ?? []) as readonly Keyed[];

/** In the order that is wanted, then what came on file meanwhile. */
function mergeKeyed(
  name: string,
  at: string,
  was: readonly Keyed[],
  wanted: readonly Keyed[],
  now: readonly Keyed[],
  clashes: TourClash[],
): Keyed[] {
  const find = (all: readonly Keyed[], id: string): Keyed | undefined => all.find((each) => each.id === id);
  const merged: Keyed[] = [];
  const clash = (path: string, yours: unknown, onFile: unknown): void =>
    void clashes.push({ path, yours: yours ?? null, onFile: onFile ?? null });
  const inOrder = same(idsOf(was), idsOf(wanted))
    ? [...now, ...wanted.filter((each) => !find(now, each.id))]
    : [...wanted, ...now.filter((each) => !find(wanted, each.id))];
  for (const { id } of inOrder) {
    const [began, yours, onFile] = [find(was, id), find(wanted, id), find(now, id)];
    const place = `${at}${name}[${merged.length}]`;
    if (yours && onFile) merged.push(mergeFields(name, `${place}.`, began ?? {}, yours, onFile, clashes) as Keyed);
    else if (yours && !began) merged.push(yours);
    else if (onFile && !began) merged.push(onFile);
    // One took it out: that holds where the other left it as it was.
    else if (began && (yours ?? onFile) && !same(yours ?? onFile, began)) clash(`${at}${name}.${id}`, yours, onFile);
  }
  return merged;
}

const idsOf = (all: readonly Keyed[]): readonly string[] => all.map((each) => each.id);

function mergeSets(was: unknown, wanted: unknown, now: unknown): unknown[] {
  const [before, yours, onFile] = [was, wanted, now].map((each) => (each ?? []) as unknown[]) as [unknown[], unknown[], unknown[]];
  const kept = onFile.filter((each) => yours.includes(each) || !before.includes(each));
  return [...kept, ...yours.filter((each) => !onFile.includes(each) && !before.includes(each))];
}

type Case = Fields & { readonly case: string };

function mergeFreight(was: unknown, wanted: unknown, now: unknown, clashes: TourClash[]): unknown[] {
  const byId = (all: unknown): Keyed[] => ((all ?? []) as Case[]).map(({ case: id, ...rest }) => ({ id, ...rest }));
  return mergeKeyed('freight', '', byId(was), byId(wanted), byId(now), clashes).map(({ id, ...rest }) => ({ case: id, ...rest }));
}
