import type { PlainDate } from '#kernel';
import type { ReasonAgainst } from '../reason/index.js';
import type { HangSubject, ItemSubject, LineSubject, ModelSubject, PickSubject, ShowSubject } from '../subject/index.js';
import type { Of } from './shape.js';

export type HardwareFinding =
  | (Of<
      'hardware-missing',
      { readonly line: LineSubject; readonly lots: readonly ItemSubject[] },
      {
        readonly missing: number;
        readonly travelling: number;
        readonly spares: number;
        readonly onHand: number;
        readonly keptAtHome: number;
      }
    > & {
      readonly days: { readonly from: PlainDate; readonly to: PlainDate };
      readonly outOfUse: readonly { readonly lot: string; readonly count: number; readonly why: ReasonAgainst }[];
    })
  | (Of<'travelling-and-fitted-differ', { readonly lines: readonly LineSubject[] }> & {
      readonly counts: readonly {
        readonly item: string;
        readonly model: string;
        readonly travelling: number;
        readonly staysInBox: number;
        readonly fitted: number;
        readonly difference: number;
      }[];
    })
  | Of<'kept-with-boxes-differs', { readonly model: ModelSubject }, { readonly onFile: number; readonly byModels: number }>
  | Of<'frame-not-counted', { readonly model: ModelSubject }, { readonly frames: number }>
  | (Of<'control-not-counted', { readonly models: readonly ModelSubject[] }> & {
      readonly lacking: readonly { readonly model: string; readonly hoists: number; readonly parts: readonly string[] }[];
    })
  | Of<'frame-without-rated-value', { readonly hang: HangSubject; readonly model: ModelSubject }, { readonly carriesKg: number }>
  | Of<
      'frame-over-rated',
      { readonly hang: HangSubject; readonly model: ModelSubject },
      { readonly carriesKg: number; readonly limitKg: number; readonly ratedKg: number; readonly share: number }
    >
  /** What hangs at the points with the hoists and is in no load: the most at one pick. */
  | (Of<'control-not-in-loads', { readonly show: ShowSubject }, { readonly massKg: number; readonly heightMm: number }> & {
      readonly parts: readonly string[];
    })
  | Of<
      'chain-too-short',
      { readonly pick: PickSubject; readonly hoist: ItemSubject | ModelSubject },
      { readonly onFileM: number; readonly neededM: number; readonly pointHeightMm: number | null }
    >
  | Of<'no-point-height', { readonly show: ShowSubject; readonly hangs: readonly HangSubject[] }>;
