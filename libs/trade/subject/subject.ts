import type { PlainDate } from '#kernel';
import type { HangId, ItemId, LoadId, RuleId, ShowId, SystemId, TourId, TruckId } from './id.js';

export interface TourSubject {
  readonly kind: 'tour';
  readonly id: TourId;
  readonly name: string;
}
export interface ShowSubject {
  readonly kind: 'show';
  readonly id: ShowId;
  readonly name: string;
}
export interface HangSubject {
  readonly kind: 'hang';
  readonly id: HangId;
  readonly name: string;
}
/** The joint above the box of a position, 1 at the top. */
export interface JointSubject {
  readonly kind: 'joint';
  readonly hang: HangId;
  readonly name: string;
  readonly position: number;
}
export interface PickSubject {
  readonly kind: 'pick';
  readonly hang: HangId;
  readonly name: string;
  readonly hole: string;
}
/** A point of the structure. */
export interface PointSubject {
  readonly kind: 'point';
  readonly name: string;
}
export interface StructureSubject {
  readonly kind: 'structure';
}
export interface LoadSubject {
  readonly kind: 'cart load';
  readonly id: LoadId;
  readonly name: string;
}
export interface CartSubject {
  readonly kind: 'cart';
  readonly id: ItemId;
}
/** A place on a cart, 1 at the top of the stack. */
export interface SlotSubject {
  readonly kind: 'slot';
  readonly cart: ItemId | null;
  readonly slot: number;
}
export interface ItemSubject {
  readonly kind: 'item';
  readonly id: ItemId;
}
export interface ModelSubject {
  readonly kind: 'model';
  readonly id: string;
}
export interface TruckSubject {
  readonly kind: 'truck';
  readonly id: TruckId;
}
/** `gross`: all axles together. */
export type AxleName = 'kingpin' | 'trailer' | 'drive' | 'steer' | 'front' | 'rear' | 'gross';
export interface AxleSubject {
  readonly kind: 'axle';
  readonly truck: TruckId;
  readonly axle: AxleName;
}
/** A row across a truck, 1 at the nose. */
export interface RowSubject {
  readonly kind: 'row';
  readonly truck: TruckId;
  readonly row: number;
}
/** What rides in a truck, with what the loader calls it. */
export interface PieceSubject {
  readonly kind: 'piece';
  readonly id: ItemId;
  readonly name: string;
}
/** Pieces that come off together. */
export interface GroupSubject {
  readonly kind: 'group';
  readonly name: string;
}
/** A line of hardware. */
export interface LineSubject {
  readonly kind: 'line';
  readonly item: string;
  readonly model: string;
  readonly size: string | null;
}
export interface DaySubject {
  readonly kind: 'day';
  readonly on: PlainDate;
}
/** A regime, or one field of it, with the place where its value stands. */
export interface RuleSubject {
  readonly kind: 'rule';
  readonly id: RuleId;
  readonly title: string;
  readonly jurisdiction: string;
  readonly edition: string | null;
  /** Path in the rule on file, for example `workingCoefficients.elements[shackle]`; null: the whole rule. */
  readonly field: string | null;
  readonly source: string;
  readonly status: 'found' | 'from memory' | 'house rule';
}
/** A jurisdiction, by its code. */
export interface PlaceSubject {
  readonly kind: 'place';
  readonly id: string;
}
export interface SystemSubject {
  readonly kind: 'system';
  readonly id: SystemId;
}
/** A field of what was given, by its path. */
export interface FieldSubject {
  readonly kind: 'field';
  readonly path: readonly (string | number)[];
}
/** What a person or a record says, passed on as it is written. Nothing reads it. */
export interface QuoteSubject {
  readonly kind: 'quote';
  readonly text: string;
}

/** What a finding or a refusal is about. Screens link it by kind and id; what it is called is a matter of words. */
export type Subject =
  | TourSubject
  | ShowSubject
  | HangSubject
  | JointSubject
  | PickSubject
  | PointSubject
  | StructureSubject
  | LoadSubject
  | CartSubject
  | SlotSubject
  | ItemSubject
  | ModelSubject
  | TruckSubject
  | AxleSubject
  | RowSubject
  | PieceSubject
  | GroupSubject
  | LineSubject
  | DaySubject
  | RuleSubject
  | PlaceSubject
  | SystemSubject
  | FieldSubject
  | QuoteSubject;

/** Subjects by what they are to the finding; the first is what it is about. */
export type Subjects = Readonly<Record<string, Subject | readonly Subject[] | null>>;

/** Figures by name, the unit last in it; null where none is on file. */
export type Numbers = Readonly<Record<string, number | null | readonly number[]>>;
