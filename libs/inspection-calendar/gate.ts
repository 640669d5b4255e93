import { type PlainDate, addDays } from '#kernel';
import { type OtherCheck, type ReasonAgainst, holdsAt, intervalsOfItem, intervalsOfRules } from '#trade';
import type { ExaminedItem, JudgedWindow } from './dates/index.js';
import { type ItemJudgement, judgeItem } from './dates/index.js';

/** How often the kinds of a place are examined, of a rule on file. */
export interface PlaceRule {
  readonly jurisdiction: string;
  readonly kinds: readonly string[];
  /** Left out: the examination of lifting equipment. */
  readonly check?: OtherCheck;
  readonly intervals: readonly string[];
}

/** Whose rules hold at a place that has none on file, as the safety officer answered. */
export interface TakenRules {
  readonly place: string;
  readonly rulesOf: string;
}

/** Where items are used: the jurisdictions that are visited, every examination rule on file, and the safety officer's answers where there is none. */
export interface Place<T extends TakenRules = TakenRules> {
  readonly jurisdictions: readonly string[];
  readonly rules: readonly PlaceRule[];
  readonly taken?: readonly T[];
}

/** An item of any kind as the register holds it. `intervals` are its own and take the place of those of every rule. */
export interface GatedItem extends Omit<ExaminedItem, 'intervals' | 'seenOn'> {
  readonly kind: string;
  readonly state: string;
  /** It, or its model, waits for the safety officer. */
  readonly unaccepted?: 'item' | 'model';
  /** What a person wrote of its state. */
  readonly reason?: string;
  readonly intervals?: readonly string[];
  /** Whose it is. */
  readonly owner?: string;
  /** Kit of others: its paper, or that it is missing, and its return. */
  readonly lent?: {
    readonly by: string;
    readonly paper?: object;
    readonly cleared?: object;
    readonly givenBack?: { readonly on: PlainDate };
  };
  readonly hire?: { readonly from: PlainDate; readonly to: PlainDate };
}

/** What the gate says of one item in one window. */
export interface GateVerdict {
  /** The first day of the window on which it may not be used; null: it passes on every day. */
  readonly barredFrom: PlainDate | null;
  readonly reason: ReasonAgainst | null;
  /** Visited places without any rule on file: there it is not judged, which is no pass. */
  readonly notJudgedIn: readonly string[];
  readonly judgement: ItemJudgement;
}

/** Whether a rule on file says how often something is examined there, of the place or of its country; rules of other checks judge no lifting equipment. */
export const hasRules = (place: string, rules: readonly PlaceRule[]): boolean =>
  rules.some((rule) => holdsAt(rule.jurisdiction, place) && rule.intervals.length > 0 && rule.check === undefined);

/** Answers that hold: of visited places without rules of their own, where those that are taken are still on file. Rules of the place itself end its answer. */
export const answersThatHold = <T extends TakenRules>({ jurisdictions, rules, taken }: Place<T>): readonly T[] =>
  (taken ?? []).filter(({ place, rulesOf }) => jurisdictions.includes(place) && !hasRules(place, rules) && hasRules(rulesOf, rules));

/** Jurisdictions of a place of which no rule on file says how often anything is examined, of the country neither, and no answer whose rules hold instead. */
export function unjudgedPlaces(place: Place): readonly string[] {
  const answered = new Set(answersThatHold(place).map((each) => each.place));
  return place.jurisdictions.filter((each) => !hasRules(each, place.rules) && !answered.has(each));
}

/** The jurisdictions whose rules hold: of the places visited, and those taken where a place has none. */
const ruling = (place: Place): readonly string[] => [...place.jurisdictions, ...answersThatHold(place).map((each) => each.rulesOf)];

/**
 * The intervals that an item is examined and checked at in a place: its own or those of every rule of the places visited, and those of other checks.
 * Empty: no rule says how often.
 */
export function intervalsIn(item: Pick<GatedItem, 'kind' | 'intervals'>, place: Place): readonly string[] {
  const jurisdictions = ruling(place);
  const fitting = place.rules.filter(
    (rule) => jurisdictions.some((each) => holdsAt(rule.jurisdiction, each)) && rule.kinds.includes(item.kind),
  );
  return intervalsOfItem(item.intervals, intervalsOfRules(fitting).sort());
}

/**
 * The one gate: whether an item may be used on the days of a window at a place. Every way to the stage asks it. Of kinds without a rule the state,
 * the period of hire, failures, events and defects decide; a place without rules is named and judges nothing.
 */
export function judge(item: GatedItem, days: JudgedWindow, place: Place): GateVerdict {
  const { id, examinations, events, declaredOn } = item;
  const judgement = judgeItem({ id, intervals: [...intervalsIn(item, place)], examinations, events, declaredOn }, days);
  return { ...barrier(item, days, judgement), notJudgedIn: unjudgedPlaces(place), judgement };
}

/** What keeps kit of others from being used on any day: it went back, or nobody has seen its paper and the safety officer has not cleared that. */
export function barOfLent({ lent, owner }: Pick<GatedItem, 'lent' | 'owner'>): Extract<ReasonAgainst, { owner: string | null }> | null {
  if (lent?.givenBack) return { code: 'given-back', owner: owner ?? null, on: lent.givenBack.on };
  return lent && !lent.paper && !lent.cleared ? { code: 'paper-missing', owner: owner ?? null } : null;
}

function barrier(item: GatedItem, { from, to }: JudgedWindow, judgement: ItemJudgement): Pick<GateVerdict, 'barredFrom' | 'reason'> {
  const ofOthers = barOfLent(item);
  if (ofOthers?.code === 'given-back') return { barredFrom: from, reason: ofOthers };
  if (item.state !== 'in service') return { barredFrom: from, reason: { code: 'state', state: item.state, remark: item.reason ?? null } };
  if (item.unaccepted) return { barredFrom: from, reason: { code: 'not-accepted', of: item.unaccepted } };
  if (ofOthers) return { barredFrom: from, reason: ofOthers };
  if (judgement.state === 'failed') return { barredFrom: from, reason: { code: 'failed' } };
  if (judgement.state === 'blocked') return { barredFrom: from, reason: { code: 'blocked' } };
  if (judgement.state === 'no record') return { barredFrom: from, reason: { code: 'no-record' } };
  const ends: { barredFrom: PlainDate; reason: ReasonAgainst }[] = [];
  const { hire } = item;
  if (hire) {
    const reason = { code: 'hired', from: hire.from, until: hire.to } as const;
    if (hire.from > from) ends.push({ barredFrom: from, reason });
    else if (hire.to < to) ends.push({ barredFrom: later(from, addDays(hire.to, 1)), reason });
  }
  const { dueOn } = judgement;
  if (dueOn !== null && dueOn < to) ends.push({ barredFrom: later(from, addDays(dueOn, 1)), reason: { code: 'out-of-date', dueOn } });
  return ends.sort((a, b) => (a.barredFrom < b.barredFrom ? -1 : 1))[0] ?? { barredFrom: null, reason: null };
}

const later = (a: PlainDate, b: PlainDate): PlainDate => (a > b ? a : b);
