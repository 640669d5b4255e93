import { type PackPlan, type ToldFinding, subjectsOf } from '#pack-plan';
import type { TourFile } from '#tour-file';

export interface Note {
  readonly role: 'warehouse' | 'system' | 'safety';
  readonly weight: 'agrees' | 'look' | 'stop';
  readonly code: string;
  readonly subject: string;
  readonly date: string | null;
  readonly sentence: string;
  readonly tourId: string | null;
  readonly showId: string | null;
  readonly itemId: string | null;
}

export interface PlanInForce {
  readonly tourId: string;
  readonly showId: string;
  readonly state: 'draft' | 'released' | 'superseded';
  readonly revision: string | null;
  readonly plan: PackPlan;
  readonly changed: readonly string[];
  readonly confirmedLoads: readonly string[];
}

const roleOf: Record<ToldFinding['section'], Note['role']> = {
  carts: 'warehouse',
  hardware: 'warehouse',
  truck: 'warehouse',
  picks: 'system',
  inputs: 'system',
  due: 'safety',
};

/** What needs each role's eyes, stops first, then by show. Shows that are over are left out. */
export function attentionNotes(tours: readonly TourFile['tour'][], plans: readonly PlanInForce[], today: string): readonly Note[] {
  const notes: Note[] = [];
  for (const tour of tours) {
    for (const show of tour.shows) {
      if (show.to < today) continue;
      const own = plans.filter((each) => each.tourId === tour.id && each.showId === show.id);
      const released = own.find((each) => each.state === 'released');
      const plan = released ?? own.find((each) => each.state === 'draft');
      const say = (role: Note['role'], weight: Note['weight'], code: string, sentence: string): void => {
        notes.push({ role, weight, code, subject: show.name, date: show.from, sentence, tourId: tour.id, showId: show.id, itemId: null });
      };
      if (!plan) say('system', 'look', 'no-plan', `${show.name} on ${show.from} has no plan yet.`);
      else if (!released)
        say('system', 'look', 'not-released', `The plan of ${show.name} on ${show.from} is a draft. Release it when it is right.`);
      if (released && released.changed.length > 0)
        say(
          'system',
          'look',
          'stale',
          `Revision ${released.revision} of ${show.name} is stale: ${released.changed.slice(0, 3).join('; ')}${released.changed.length > 3 ? '; ...' : ''}.`,
        );
      if (released) {
        const open = released.plan.carts.loads.filter((load) => !released.confirmedLoads.includes(load.id)).length;
        if (open > 0)
          say(
            'warehouse',
            'look',
            'carts-to-confirm',
            `${open} of ${released.plan.carts.loads.length} carts of ${show.name} are not confirmed yet.`,
          );
      }
      for (const finding of plan?.plan.findings ?? []) {
        if (finding.weight === 'agrees') continue;
        const item = subjectsOf(finding).find((each) => each.kind === 'item');
        const itemId = item && (finding.section === 'due' || finding.code === 'out-of-service-in-cart') ? item.id : null;
        notes.push({
          role: roleOf[finding.section],
          weight: finding.weight,
          code: finding.code,
          subject: finding.subject,
          date: finding.date,
          sentence: `${show.name}: ${finding.sentence}`,
          tourId: tour.id,
          showId: show.id,
          itemId,
        });
      }
    }
  }
  const order = { stop: 0, look: 1, agrees: 2 };
  return once(notes).sort((a, b) => order[a.weight] - order[b.weight]);
}

/** What several shows of one tour say of the same thing is said once, with the most weight it has. */
function once(notes: readonly Note[]): Note[] {
  const order = { stop: 0, look: 1, agrees: 2 };
  const best = new Map<string, Note>();
  for (const each of notes) {
    const key =
      each.code === 'cart-exception'
        ? `${each.tourId} ${each.showId} ${each.sentence}`
        : `${each.tourId} ${each.code} ${each.subject} ${each.date}`;
    const known = best.get(key);
    if (!known || order[each.weight] < order[known.weight]) best.set(key, each);
  }
  return [...best.values()];
}
