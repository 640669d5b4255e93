import { canonicalJson, textHash } from '#kernel';
import { type ToldFinding, subjectsOf } from '#pack-plan';
import { type ReasonAgainst, type Subject, mainSubjects } from '#trade';

export const roles = ['warehouse', 'system', 'safety'] as const;

export interface Note {
  /** What it is about: no two notes of a list have the same. */
  readonly key: string;
  readonly role: (typeof roles)[number];
  readonly weight: 'agrees' | 'look' | 'stop';
  readonly code: string;
  readonly subject: string;
  readonly date: string | null;
  readonly sentence: string;
  readonly tourId: string;
  readonly showId: string;
  /** Name of the show. */
  readonly show: string;
  readonly itemId: string | null;
}

/** A show that is not over, with its plan in force; without a plan, `state` is null. */
export interface ShowInSight {
  readonly tourId: string;
  readonly showId: string;
  readonly name: string;
  readonly from: string;
  readonly planId: string | null;
  readonly state: 'draft' | 'released' | null;
  readonly revision: string | null;
  /** Those of the plan that say more than "agrees". */
  readonly findings: readonly ToldFinding[];
  readonly loads: number;
  readonly confirmed: number;
  /** What of a released plan must not fly as things stand now. */
  readonly barred: readonly {
    readonly item: string;
    readonly code: ReasonAgainst['code'];
    readonly why: string;
    /** Hangs in the air that it is part of. */
    readonly aloft: readonly { readonly name: string; readonly inCharge: string | null }[];
  }[];
  /** What was done although it was barred, in sentences; `seen`: what the safety officer has said of it. */
  readonly barredActs: readonly { readonly id: string; readonly itemId: string; readonly sentence: string; readonly seen: string | null }[];
  /** Changed inputs of a released plan, in words. */
  readonly changed: readonly string[];
}

const roleOf: Record<ToldFinding['section'], Note['role']> = {
  carts: 'warehouse',
  hardware: 'warehouse',
  truck: 'warehouse',
  picks: 'system',
  inputs: 'system',
  due: 'safety',
};

const order = { stop: 0, look: 1, agrees: 2 };

/** What needs each role's eyes, stops first, then by show. What several shows of one tour say of the same thing is said once, with the most weight. */
export function attentionNotes(shows: readonly ShowInSight[]): readonly Note[] {
  const best = new Map<string, Note>();
  for (const note of shows.flatMap((show) => [...notesOfShow(show), ...notesOfPlan(show)])) {
    const known = best.get(note.key);
    if (!known || order[note.weight] < order[known.weight]) best.set(note.key, note);
  }
  return [...best.values()].sort((a, b) => order[a.weight] - order[b.weight]);
}

/** Things that go from show to show: what is said of them at one is said at the next. Hangs, loads and trucks of a show are its own. */
function idOf(subject: Subject): string | null {
  switch (subject.kind) {
    case 'tour':
    case 'item':
    case 'model':
    case 'system':
      return `${subject.kind} ${subject.id}`;
    case 'rule':
      return `rule ${subject.id} ${subject.field}`;
    case 'line':
      return `line ${subject.item} ${subject.model} ${subject.size}`;
    default:
      return null;
  }
}

function keyOfFinding({ tourId, showId }: ShowInSight, { code, date, fact }: ToldFinding): string {
  const ids = mainSubjects(fact.subjects).map(idOf);
  const isOfTheTour = ids.length > 0 && !ids.includes(null);
  return isOfTheTour ? `${tourId} ${code} ${ids.join(', ')} ${date}` : `${tourId} ${showId} ${code} ${textHash(canonicalJson(fact))}`;
}

function notesOfShow({ tourId, showId, name, from, state, revision, loads, confirmed, changed, barred, barredActs }: ShowInSight): Note[] {
  const say = (role: Note['role'], code: string, sentence: string): Note => ({
    ...{ key: `${tourId} ${showId} ${code}`, role, weight: 'look', code, subject: name, date: from, sentence },
    ...{ tourId, showId, show: name, itemId: null },
  });
  // Whatever became of the plan since: it was done, and stops until somebody has looked.
  const open = barredActs.filter((each) => each.seen === null);
  const acts: Note[] = open.map(({ id, itemId, sentence }) => ({
    ...say('safety', 'done-although-barred', `${name}: ${sentence}`),
    ...{ key: `${tourId} ${showId} done although barred ${id}`, weight: 'stop' as const, subject: itemId, itemId },
  }));
  return [...acts, ...notesOfState(say, { tourId, showId, name, from, state, revision, loads, confirmed, changed, barred })];
}

type Say = (role: Note['role'], code: string, sentence: string) => Note;

function notesOfState(
  say: Say,
  {
    tourId,
    showId,
    name,
    from,
    state,
    revision,
    loads,
    confirmed,
    changed,
    barred,
  }: Omit<ShowInSight, 'planId' | 'findings' | 'barredActs'>,
): Note[] {
  if (state === null) return [say('system', 'no-plan', `${name} on ${from} has no plan yet.`)];
  const what = `${changed.slice(0, 3).join('; ')}${changed.length > 3 ? '; ...' : ''}`;
  if (state === 'draft')
    return changed.length > 0
      ? [say('system', 'stale', `The draft of ${name} on ${from} is stale: ${what}. Plan again; what it says below may no longer hold.`)]
      : [say('system', 'not-released', `The plan of ${name} on ${from} is a draft. Release it when it is right.`)];
  // Of the safety officer, and of everybody who has it in hand.
  const unjudged = barred.find((each) => each.code === 'not-judged');
  const notJudged: Note[] = unjudged
    ? roles.map((role) => ({
        ...say(
          role,
          'barred',
          `Nothing of revision ${revision} of ${name} may fly: ${unjudged.why}. Scan, tick and signature refuse it; the safety officer answers for the place on the page of the tour.`,
        ),
        key: `${tourId} ${showId} barred ${role}`,
        weight: 'stop' as const,
      }))
    : [];
  const ofItems = barred.filter((each) => each.code !== 'not-judged');
  const notes: Note[] = ofItems.flatMap(({ item, why }) =>
    roles.map((role) => ({
      ...say(
        role,
        'barred',
        `${item} of revision ${revision} of ${name} must not fly: ${why}. Scan, tick and signature refuse it; find another.`,
      ),
      key: `${tourId} ${showId} barred ${role} ${item}`,
      weight: 'stop' as const,
      subject: item,
      itemId: item,
    })),
  );
  notes.unshift(...aloftNotes(say, { tourId, showId, name, barred }), ...notJudged);
  if (changed.length > 0) notes.push(say('system', 'stale', `Revision ${revision} of ${name} is stale: ${what}.`));
  const open = loads - confirmed;
  if (open > 0) notes.push(say('warehouse', 'carts-to-confirm', `${open} of ${loads} carts of ${name} are not confirmed yet.`));
  return notes;
}

/** What hangs in the air with something that must not fly: for everybody, with who is in charge. */
function aloftNotes(say: Say, { tourId, showId, name, barred }: Pick<ShowInSight, 'tourId' | 'showId' | 'name' | 'barred'>): Note[] {
  return barred.flatMap(({ item, why, aloft: hangs }) =>
    hangs.flatMap((hang) =>
      roles.map((role) => ({
        ...say(
          role,
          'barred-in-the-air',
          `IN THE AIR: ${hang.name} of ${name}${hang.inCharge === null ? '' : `, in charge: ${hang.inCharge}`}, hangs with ${item}, which must not fly: ${why}. Lower it; the way down stays open.`,
        ),
        key: `${tourId} ${showId} aloft ${role} ${hang.name} ${item}`,
        weight: 'stop' as const,
        subject: item,
        itemId: item,
      })),
    ),
  );
}

function notesOfPlan(show: ShowInSight): Note[] {
  const { tourId, showId, name } = show;
  return show.findings.map((finding) => {
    const { section, weight, code, subject, date, sentence } = finding;
    const item = subjectsOf(finding).find((each) => each.kind === 'item');
    return {
      ...{ key: keyOfFinding(show, finding), role: roleOf[section], weight, code, subject, date, sentence: `${name}: ${sentence}` },
      ...{ tourId, showId, show: name, itemId: item && (section === 'due' || code === 'out-of-service-in-cart') ? item.id : null },
    };
  });
}
