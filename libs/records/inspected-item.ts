import type { Examination, ItemKind, ItemState } from '#tour-file';

export interface InspectedRecord {
  readonly id: string;
  readonly examination: Examination;
  readonly recordedBy: string;
  readonly recordedAt: string;
  readonly reason: string | null;
  readonly file: { readonly name: string; readonly sha256: string } | null;
}

/** An item with everything of it that an inspector asks for: records that count, oldest first, incidents, where it was. */
export interface InspectedItem {
  readonly id: string;
  readonly kind: ItemKind;
  readonly model: string;
  readonly state: ItemState;
  readonly count: number | null;
  readonly depot: string;
  readonly owner: string | null;
  readonly declaredOn: string | null;
  readonly boughtOn: string | null;
  readonly firstUsedOn: string | null;
  /** By the strictest rules on file; null: nothing runs out, or it may not be used. */
  readonly dueOn: string | null;
  readonly dueState: string | null;
  readonly rated: { readonly value: number; readonly unit: string; readonly source: string | null } | null;
  /** Of a box: its joint, newtons. */
  readonly ratedJoint: { readonly rearLinkN: number | null; readonly frontPinN: number | null; readonly source: string | null } | null;
  readonly records: readonly InspectedRecord[];
  readonly incidents: readonly { readonly on: string; readonly what: string }[];
  /** Tours that held it, by day. */
  readonly flown: readonly { readonly tour: string; readonly from: string; readonly to: string }[];
  /** Days on which it went out of service and came back. */
  readonly outs: readonly { readonly on: string; readonly what: string; readonly sentence: string }[];
}
