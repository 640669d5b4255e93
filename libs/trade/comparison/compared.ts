import type { RuleSubject } from '../subject/index.js';

/** Which steel a load is held against: below the hook, a leg of a bridle, the line of a pull-back, what holds if a hoist lets go. */
export type SteelLine = 'pick' | 'bridle leg' | 'pull-back' | 'secondary';

/** What a load is compared with. */
export type ComparedPart =
  | { readonly code: 'hoist'; readonly model: string }
  | { readonly code: 'hoist-while-lifting'; readonly model: string; readonly hole: string }
  | { readonly code: 'hoist-class'; readonly model: string }
  /** The use case of the show against what it asks of this hoist. */
  | { readonly code: 'use-case'; readonly model: string }
  | { readonly code: 'sling'; readonly model: string; readonly line: SteelLine }
  | { readonly code: 'shackle'; readonly model: string; readonly line: SteelLine }
  | { readonly code: 'shackle-side-load'; readonly line: SteelLine }
  | { readonly code: 'leg-angle' }
  | { readonly code: 'grid'; readonly model: string; readonly hole: string }
  /** Named where several picks share the point. */
  | { readonly code: 'structure'; readonly point?: string }
  /** What holds one leg of a bridle, counted from 1, or the line of a pull-back. */
  | { readonly code: 'leg-anchor'; readonly leg: number }
  | { readonly code: 'anchor' }
  /** A truss or beam with everything that hangs on it. */
  | { readonly code: 'beam'; readonly beam: string }
  | { readonly code: 'rear-link'; readonly model: string }
  | { readonly code: 'front-pin'; readonly model: string }
  /** Of a plan that kept its words alone. */
  | { readonly code: 'as-called'; readonly name: string };

/** What a rated load is multiplied by before it is compared. */
export type FactorCause =
  | { readonly code: 'coefficient'; readonly personsBelow: number; readonly nobodyBelow: number }
  | { readonly code: 'persons-below' }
  | { readonly code: 'side-load'; readonly angleDeg: number }
  | { readonly code: 'hoist-class'; readonly hoistClass: string }
  | { readonly code: 'use-case'; readonly useCase: string }
  /** The rated load on file is reduced already: only what is asked beyond that comes off it. */
  | {
      readonly code: 'rated-for';
      readonly kind: 'class' | 'use case';
      readonly name: string;
      readonly already: number;
      readonly asked: number;
    }
  | { readonly code: 'one-pick-slack' };

/** A figure of a load rule that lets more pass than a published one: what it is of, both figures, and where the other stands. */
export type BelowPublished = { readonly figure: number; readonly published: number; readonly source: string } & (
  | { readonly code: 'share' }
  | { readonly code: 'element'; readonly element: string }
  | { readonly code: 'legs' }
);

export interface FactorFact {
  readonly cause: FactorCause;
  readonly factor: number;
  readonly rule: RuleSubject;
}

/** What came of a comparison, by what was compared how. */
export type ComparisonCause =
  | 'within'
  | 'over'
  | 'would-be-pushed'
  | 'no-rated-value'
  | 'side-load-forbidden'
  | 'side-load-without-rule'
  | 'legs-steep-enough'
  | 'legs-too-flat'
  | 'legs-without-rule'
  | 'class-without-rule'
  | 'class-not-on-file'
  | 'class-not-in-rule'
  | 'class-must-not-move'
  | 'class-must-not-hold'
  | 'class-wants-secondary'
  | 'class-may-hold'
  | 'use-case-without-rule'
  | 'use-case-not-in-rule'
  | 'use-case-not-said'
  | 'use-case-other-people'
  | 'use-case-wants-class'
  | 'use-case-class-unknown'
  | 'rated-for-without-rule'
  | 'use-case-as-asked';

export type ComparedVerdict = 'within' | 'over' | 'no rated value on file' | 'no rule on file';

export const verdictOfCause: Readonly<Record<ComparisonCause, ComparedVerdict>> = {
  within: 'within',
  over: 'over',
  'would-be-pushed': 'over',
  'no-rated-value': 'no rated value on file',
  'side-load-forbidden': 'over',
  'side-load-without-rule': 'no rule on file',
  'legs-steep-enough': 'within',
  'legs-too-flat': 'over',
  'legs-without-rule': 'no rule on file',
  'class-without-rule': 'no rule on file',
  'class-not-on-file': 'no rule on file',
  'class-not-in-rule': 'no rule on file',
  'class-must-not-move': 'over',
  'class-must-not-hold': 'over',
  'class-wants-secondary': 'over',
  'class-may-hold': 'within',
  'use-case-without-rule': 'no rule on file',
  'use-case-not-in-rule': 'no rule on file',
  'use-case-not-said': 'no rule on file',
  'use-case-other-people': 'over',
  'use-case-wants-class': 'over',
  'use-case-class-unknown': 'no rule on file',
  'rated-for-without-rule': 'no rule on file',
  'use-case-as-asked': 'within',
};

/** Whether the load rule of the show, beside the factors, lets the thing be done; what hoists may do over people. */
export interface HoistUseFact {
  readonly hoistClass: string | null;
  readonly needsSecondary: boolean;
  readonly movesOverPersons: boolean;
  readonly useCase?: UseCaseFact;
}

/** For whom a use case is. */
export type UsePeople = 'nobody below' | 'held over' | 'moved over';

/** The use case of a show, and what it asks of a hoist. */
export interface UseCaseFact {
  /** null where the load rule has none for this show. */
  readonly name: string | null;
  /** What is true of the show, and what the case is for. */
  readonly people: UsePeople;
  readonly casePeople: UsePeople | null;
  /** Those that would all fit, where the show names none of them. */
  readonly several: readonly string[];
  /** Classes that it asks for; none: any. */
  readonly classes: readonly string[];
  readonly ratedForUseCase: string | null;
}

/** A load held against what is on file, as data: which part, what came of it, the figures, the rules that had a say. */
export interface ComparisonFact {
  readonly code: ComparisonCause;
  readonly part: ComparedPart;
  readonly value: number;
  /** `kg`, `N`, `deg`, or nothing where there is no figure. */
  readonly unit: string;
  readonly limit: number | null;
  /** As it is stated, in its own unit. */
  readonly rated: { readonly value: number; readonly unit: string } | null;
  readonly factors: readonly FactorFact[];
  readonly rule: RuleSubject | null;
  readonly use?: HoistUseFact;
  /** At which stage of lifting, where it is the worst of all stages. */
  readonly worstAt?: { readonly position?: number; readonly stage: StageFact };
}

/** A moment of building a hang. */
export type StageFact =
  | { readonly code: 'at-trim' }
  /** At trim, the line of its pull-back at half of what it is taken up to. */
  | { readonly code: 'line-half-taken-up' }
  /** At trim with the line of its pull-back. */
  | { readonly code: 'line-taken-up' }
  /** One of two picks carries the whole hang, the other nothing. */
  | { readonly code: 'other-slack' }
  /** `name`: what people called the load when the plan was made; earlier plans have its id alone. */
  | { readonly code: 'lifting'; readonly load: string; readonly name?: string; readonly moment: string }
  | { readonly code: 'coming-down'; readonly load: string; readonly name: string; readonly moment: string };

/** What would make a hang liftable, each tried through every moment of its lift. */
export type LiftRemedy =
  | { readonly code: 'hole'; readonly holes: readonly string[] }
  | { readonly code: 'pair'; readonly pairs: readonly (readonly string[])[] }
  | { readonly code: 'two-points'; readonly holes: readonly string[] }
  | { readonly code: 'lift-tilt'; readonly tiltDeg: number }
  | { readonly code: 'smaller-cart-first' };
