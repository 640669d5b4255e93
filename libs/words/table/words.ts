import type {
  AxleName,
  BareLine,
  BelowPublished,
  BreachKinds,
  BridgeFact,
  CannotHang,
  CartException,
  Code,
  ComparedPart,
  ComparisonFact,
  DifferenceFact,
  DueCause,
  FactorCause,
  Finding,
  FindingOf,
  HangRemark,
  ImprovementFact,
  InputChange,
  InputPart,
  JudgedFact,
  KeptUntil,
  LifeStation,
  KeptBack,
  LeftOverReason,
  LoadBoundFact,
  LoadBreach,
  LoadingWish,
  MoveBackRefusal,
  MoveReason,
  PlaceReason,
  ReadFinding,
  ReadingFact,
  ReasonAgainst,
  RecordField,
  Refusal,
  RemedyFact,
  RestackReason,
  RowChoiceFact,
  RuleBasis,
  ShortageFact,
  SlotFinding,
  StageFact,
  Subject,
  TickRefusal,
  WaitingFact,
  Whereabouts,
  WorkFinding,
  CheckKind,
} from '#trade';
import type { Table } from './table.js';

/** Everything that is said to people, in one language: a sentence or a part of one for every code. Nothing reads what it gives. */
export interface Words {
  /** What an operation did, where nobody said more of it. */
  readonly didBy: (operation: string) => string;
  /** Lines of the log that nobody worded. */
  readonly log: { readonly program: string; readonly outside: string; readonly reworded: (lines: number) => string };
  readonly findings: { readonly [C in Code]: (finding: FindingOf<C>) => string };
  /** What a finding is about, in short. */
  readonly about: (subjects: readonly Subject[]) => string;
  /** A subject beside a link. */
  readonly subjects: { readonly [K in Subject['kind']]: (subject: Extract<Subject, { readonly kind: K }>) => string };
  readonly axles: Readonly<Record<AxleName, string>>;
  /** A figure of a finding by its name, with its unit. */
  readonly figure: (name: string, value: number | null | readonly number[]) => string;
  readonly parts: Table<ComparedPart>;
  readonly comparisons: Table<ComparisonFactByCode>;
  readonly factors: Table<FactorCause>;
  /** A load rule beside a published figure that is stricter. */
  readonly belowPublished: Table<BelowPublished>;
  readonly stages: Table<StageFact>;
  readonly exceptions: Table<CartException>;
  readonly against: Table<ReasonAgainst>;
  readonly keptBack: Table<KeptBack>;
  /** What set the last day of use of an item, and how it stands in the days of a tour. */
  readonly dueCauses: Table<DueCause>;
  readonly judged: Table<JudgedFact>;
  readonly cannotHang: Table<CannotHang>;
  /** What a hang by itself has to be told of. */
  readonly hangRemarks: Table<HangRemark>;
  readonly inputs: Table<InputPart>;
  readonly changes: Table<InputChange>;
  /** Ends a list that is not told to its end. */
  readonly more: (count: number) => string;
  readonly shortages: Table<ShortageFact>;
  /** Why a row of a truck stands where it does. */
  readonly rows: Table<RowChoiceFact>;
  /** Why a box or a cart stands where it does. */
  readonly places: Table<PlaceReason>;
  /** What came of looking for a shorter list of box moves. */
  readonly improvements: Table<ImprovementFact>;
  /** Why a box is moved. */
  readonly moves: Table<MoveReason>;
  readonly slots: Table<SlotFinding>;
  /** What a code says that was read on the floor. */
  readonly reads: Table<ReadFinding>;
  readonly wishes: Table<LoadingWish>;
  readonly work: Table<WorkFinding>;
  readonly restacked: Table<RestackReason>;
  readonly differences: Table<DifferenceFact>;
  readonly readings: Table<ReadingFact>;
  readonly refusals: Table<Refusal>;
  readonly tickRefusals: Table<TickRefusal>;
  readonly moveBackRefusals: Table<MoveBackRefusal>;
  readonly remedies: Table<RemedyFact>;
  readonly bridge: Table<BridgeFact>;
  readonly whereabouts: Table<Whereabouts>;
  readonly bareLines: Table<BareLine>;
  readonly leftOver: Table<LeftOverReason>;
  /** A rule of loading that is broken, said of a piece or a truck: names and figures put in. */
  readonly breaches: {
    readonly [C in keyof BreachKinds]: {
      readonly [K in BreachKinds[C]]: (names: readonly string[], numbers: Readonly<Record<string, number>>) => string;
    };
  };
  /** Why no load can do with fewer trucks or less length. */
  readonly loadBounds: Table<LoadBoundFact>;
  /** Freight that travels with items inside that must not fly. */
  readonly tag: (inside: readonly string[]) => string;
  /** What waits for the safety officer, and what holds meanwhile. */
  readonly waiting: Table<WaitingFact>;
  /** The same as the object of a sentence about what became of it. */
  readonly proposed: Table<WaitingFact>;
  /** A guarded field as it is called. */
  readonly guarded: (field: string) => string;
  /** A field of a report as it is called, and what is wanted there by a rule. */
  readonly recordField: (field: RecordField) => string;
  readonly recordWanted: (
    field: RecordField,
    by: { readonly source: string; readonly paragraph: string | null; readonly wasRead: boolean },
  ) => string;
  /** How long a record is kept. */
  readonly keptUntil: Table<KeptUntil>;
  /** What happened to an item on a day of its life. */
  readonly life: Table<LifeStation>;
  readonly ruleBasis: Readonly<Record<RuleBasis, string>>;
  /** What an examination or check is called. */
  readonly check: Readonly<Record<CheckKind, string>>;
  /** "P6M" as people say it, of another check with its name. */
  readonly interval: (interval: string) => string;
}

/** A comparison as a union over its codes. */
export type ComparisonFactByCode = {
  readonly [C in ComparisonFact['code']]: ComparisonFact & { readonly code: C };
}[ComparisonFact['code']];

export const sentenceOf = (words: Words, finding: Finding): string => (words.findings[finding.code] as (one: Finding) => string)(finding);

export const nameOf = (words: Words, subject: Subject): string => (words.subjects[subject.kind] as (one: Subject) => string)(subject);

type BreachWords = (names: readonly string[], numbers: LoadBreach['numbers']) => string;

/** What is wrong with a load, without its subject. */
export const breachOf = (breaches: Words['breaches'], { code, kind, names, numbers }: LoadBreach): string =>
  (breaches[code] as Readonly<Record<string, BreachWords>>)[kind]!(names, numbers);
