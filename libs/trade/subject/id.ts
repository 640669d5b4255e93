/** A name of a thing that never changes and is no word for people; ids of different kinds cannot be mixed up. */
export type Id<Kind extends string> = string & { readonly __id?: Kind };

export type TourId = Id<'tour'>;
export type ShowId = Id<'show'>;
export type HangId = Id<'hang'>;
export type LoadId = Id<'cart load'>;
export type ItemId = Id<'item'>;
export type TruckId = Id<'truck'>;
export type RuleId = Id<'rule'>;
export type SystemId = Id<'system'>;
