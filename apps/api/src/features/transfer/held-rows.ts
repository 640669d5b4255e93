import type { EntityManager } from 'typeorm';
import { type FieldChange, changesOf, decideChange, declarationGuard, guardOf, itemGuard } from '#editions';
import type { Item, Kit, ModelKind } from '#tour-file';
import {
  type Guarded,
  type Hand,
  type NewEdition,
  type NewProposal,
  proposedFields,
  subjectOfModel,
  vouchedByProposals,
} from '../edition/edition.writer.js';
import { holdNewItems, proposedItem } from '../register/held-items.writer.js';

/** Rows of a file or form as they hold from now on, what of them waits, and what is kept of the values before. */
export interface HeldRows<T> {
  readonly added: readonly T[];
  readonly changed: readonly T[];
  readonly waits: readonly NewProposal[];
  readonly editions: readonly NewEdition[];
  /** Guarded fields that the safety officer changes. */
  readonly own: readonly FieldChange[];
}

/** Items: of what is on file by fields, of what is new by what it says for itself. */
export async function holdItems(
  manager: EntityManager,
  kit: Kit,
  wanted: readonly Item[],
  hand: Hand,
  day: string,
): Promise<HeldRows<Item>> {
  const before = new Map(kit.items.map((item) => [item.id, item]));
  const fresh = wanted.filter((item) => !before.has(item.id));
  const known = wanted.filter((item) => before.has(item.id));
  const vouched = await vouchedByProposals(
    manager,
    known.map((item) => item.id),
  );
  const held = known.map((item) => {
    const was = before.get(item.id) ?? item;
    const isVouchedFor = was.examinations.length > 0 || was.declaredOn !== undefined || vouched.has(item.id);
    if (hand === 'other' && was.unaccepted === 'item') return stillWaiting(was, item);
    const one = holdOne({ kind: 'item', subject: item.id }, itemGuard(isVouchedFor), was, item, hand);
    // What a person wrote of a state goes with that state.
    const isStateHeld = one.waits.some((each) => each.field === 'state');
    return isStateHeld ? { ...one, inForce: { ...one.inForce, reason: was.reason } } : one;
  });
  const added = hand === 'other' ? await holdNewItems(manager, kit, fresh, day) : { items: fresh, waits: [] };
  return { ...together(held), added: added.items, waits: [...held.flatMap((each) => each.waits), ...added.waits] };
}

/** Of an item that nobody may use yet everything may be written over but what vouches for it; it waits as it is now. */
function stillWaiting(was: Item, item: Item): HeldOne<Item> {
  const one = holdOne({ kind: 'item', subject: item.id }, declarationGuard, was, item, 'other');
  const isSame = was.model === item.model && was.state === item.state && was.count === item.count;
  return { ...one, waits: [...one.waits, ...(isSame ? [] : [proposedItem(item)])] };
}

/** Models: a new one waits as a whole; one that waits may be written over until it is accepted. */
export function holdModels<T extends { readonly model: string }>(
  kind: ModelKind,
  before: ReadonlyMap<string, T>,
  unaccepted: ReadonlySet<string>,
  wanted: readonly T[],
  hand: Hand,
): HeldRows<T> {
  const guard = guardOf(kind);
  const fresh = wanted.filter((each) => !before.has(each.model));
  const known = wanted.filter((each) => before.has(each.model));
  if (guard === null) return { added: fresh, changed: known, waits: [], editions: [], own: [] };
  const whole = (each: T): NewProposal => ({ kind: 'model', subject: subjectOfModel(kind, each.model), field: '', wanted: each });
  const held = known.map((each) => {
    const was = before.get(each.model) ?? each;
    const one = holdOne({ kind: 'model', subject: subjectOfModel(kind, each.model) }, guard, was, each, hand);
    if (hand !== 'other' || !unaccepted.has(each.model)) return one;
    return { ...one, inForce: each, waits: changesOf(guard, was, each).length > 0 ? [whole(each)] : [] };
  });
  const waits = [...held.flatMap((each) => each.waits), ...(hand === 'other' ? fresh.map(whole) : [])];
  return { ...together(held), added: fresh, waits };
}

interface HeldOne<T> {
  readonly inForce: T;
  readonly waits: readonly NewProposal[];
  readonly edition: NewEdition;
  readonly own: readonly FieldChange[];
}

function holdOne<T extends object>(of: Guarded, guard: Parameters<typeof changesOf>[0], was: T, wanted: T, hand: Hand): HeldOne<T> {
  if (hand !== 'other') {
    const changes = changesOf(guard, was, wanted);
    return { inForce: wanted, waits: [], edition: { ...of, changes }, own: changes };
  }
  const { inForce, waits, atOnce } = decideChange(guard, was, wanted);
  return { inForce, waits: proposedFields(of, waits), edition: { ...of, changes: atOnce }, own: [] };
}

const together = <T>(held: readonly HeldOne<T>[]): Pick<HeldRows<T>, 'changed' | 'editions' | 'own'> => ({
  changed: held.map((each) => each.inForce),
  editions: held.map((each) => each.edition),
  own: held.flatMap((each) => each.own),
});
