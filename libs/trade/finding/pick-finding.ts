import type { BelowPublished, ComparisonFact, LiftRemedy, StageFact } from '../comparison/index.js';
import type {
  HangSubject,
  JointSubject,
  ModelSubject,
  PickSubject,
  PointSubject,
  RuleSubject,
  StructureSubject,
  SystemSubject,
} from '../subject/index.js';
import type { CannotHang, ReasonAgainst } from '../reason/index.js';
import type { Of } from './shape.js';

/** A comparison that failed or could not be made, at a pick, in a joint (with the other joints of the same fault), or of a whole hang. */
type Compared<Code extends string> = Of<
  Code,
  {
    readonly at: PickSubject | JointSubject | HangSubject | PointSubject;
    readonly alsoAt: readonly JointSubject[];
    readonly models: readonly ModelSubject[];
    readonly rules: readonly RuleSubject[];
  },
  { readonly value: number; readonly limit: number | null }
> & { readonly compared: ComparisonFact; readonly onTheWayUp: boolean };

type SilentJoints = Of<'no-rated-value', { readonly hang: HangSubject; readonly joints: readonly JointSubject[] }>;
type SilentStructure = Of<
  'no-rated-value',
  { readonly structure: StructureSubject; readonly points: readonly PointSubject[] },
  { readonly count: number }
>;

/** Lines that are planned without a piece of steel on file. */
export type BareLine =
  | { readonly code: 'pick'; readonly hole: string }
  | { readonly code: 'bridle'; readonly hole: string }
  | { readonly code: 'secondary' }
  | { readonly code: 'pull-back' };

export type PickFinding =
  | Of<'rule-from-memory', { readonly rule: RuleSubject; readonly fields: readonly RuleSubject[] }>
  | Of<'model-not-accepted', { readonly models: readonly ModelSubject[] }>
  | (Of<'rule-below-published', { readonly rule: RuleSubject; readonly fields: readonly RuleSubject[] }> & {
      readonly below: readonly BelowPublished[];
    })
  | Of<'rule-not-accepted', { readonly rule: RuleSubject }>
  | Compared<'over-rated-load'>
  | Compared<'no-rated-value'>
  | Compared<'no-rule'>
  | SilentJoints
  | SilentStructure
  /** `why` null: the pick would have to push. */
  | (Of<'cannot-hang-like-this', { readonly at: PickSubject | HangSubject }> & { readonly why: CannotHang | null })
  | (Of<'cannot-lift-like-this', { readonly pick: PickSubject }, { readonly pushNewtons: number }> & {
      readonly stage: StageFact;
      readonly remedies: readonly LiftRemedy[];
    })
  | (Of<
      'beyond-working-tilt',
      { readonly hang: HangSubject; readonly system: SystemSubject },
      { readonly tiltDeg: number; readonly limitDeg: number; readonly tailLineN: number | null }
    > & { readonly stage: StageFact; readonly remedies: readonly LiftRemedy[] })
  | (Of<'no-working-tilt', { readonly hang: HangSubject; readonly system: SystemSubject }, { readonly tiltDeg: number }> & {
      readonly stage: StageFact;
    })
  | Of<'reversed-link', { readonly hang: HangSubject; readonly joints: readonly JointSubject[] }>
  | (Of<'front-pins-pushed', { readonly hang: HangSubject; readonly joints: readonly JointSubject[] }, { readonly mostNewtons: number }> & {
      readonly stage: StageFact;
    })
  | (Of<
      'lock-pin-under-load',
      { readonly joint: JointSubject; readonly alsoAt: readonly JointSubject[] },
      { readonly mostNewtons: number }
    > & { readonly stage: StageFact })
  | Of<'point-at-two-places', { readonly point: PointSubject; readonly picks: readonly PickSubject[] }, { readonly apartMm: number }>
  | Of<'pull-back-reverses', { readonly hang: HangSubject; readonly joints: readonly JointSubject[] }>
  | Of<
      'outside-tilt-range',
      { readonly hang: HangSubject; readonly rule: RuleSubject | null },
      {
        readonly reserveShare: number;
        readonly fromDeg: number;
        readonly toDeg: number;
        readonly wantedFromDeg: number;
        readonly wantedToDeg: number;
      }
    >
  | (Of<'no-steel', { readonly hang: HangSubject }> & { readonly lines: readonly BareLine[] })
  | Of<'no-secondary', { readonly hang: HangSubject; readonly rule: RuleSubject }>
  | Of<'measure', { readonly hang: HangSubject }, { readonly points: number; readonly massKg: number }>
  | Of<
      'system-limit',
      { readonly hang: HangSubject; readonly system: SystemSubject },
      { readonly boxes: number; readonly mostBoxes: number }
    >
  | Of<
      'system-limit',
      { readonly hang: HangSubject; readonly system: SystemSubject },
      { readonly massKg: number; readonly mostMassKg: number }
    >
  | Of<'system-not-approved', { readonly system: SystemSubject }>
  | Of<'no-wind-limit', { readonly hang: HangSubject; readonly system: SystemSubject }>
  /** `wanted`: the serial that the design names, and what speaks against it. */
  | (Of<'item-missing', { readonly at: HangSubject | PickSubject; readonly model: ModelSubject }> & {
      readonly wanted: { readonly id: string; readonly why: ReasonAgainst | null } | null;
    });
