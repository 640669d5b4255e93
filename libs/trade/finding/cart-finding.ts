import type { CartException, KeptBack, ShortageFact } from '../reason/index.js';
import type { CartSubject, ItemSubject, LoadSubject, ModelSubject, QuoteSubject, ShowSubject, SlotSubject } from '../subject/index.js';
import type { Of } from './shape.js';

export type CartFinding =
  | (Of<'design-not-served', { readonly show: ShowSubject }> & { readonly shortages: readonly ShortageFact[] })
  | Of<'box-moves-mismatch', { readonly show: ShowSubject; readonly found: QuoteSubject }>
  /** `isProved`: no shorter list exists. */
  | (Of<'box-moves', { readonly show: ShowSubject }, { readonly moves: number; readonly bound: number }> & { readonly isProved: boolean })
  | (Of<
      'model-short',
      { readonly model: ModelSubject; readonly show: ShowSubject; readonly boxes: readonly ItemSubject[] },
      { readonly missing: number }
    > & {
      readonly isOwnShow: boolean;
      /** Days on which it is short, and what keeps boxes back on the worst of them. */
      readonly days: { readonly from: string; readonly to: string };
      readonly keptBack: readonly { readonly box: string; readonly why: KeptBack }[];
    })
  | (Of<
      'out-of-service-in-cart',
      { readonly box: ItemSubject; readonly slot: SlotSubject; readonly load: LoadSubject | null; readonly remark: QuoteSubject | null }
    > & { readonly state: string })
  | (Of<'cart-exception', { readonly cart: CartSubject | LoadSubject; readonly load: LoadSubject }> & {
      readonly exception: CartException;
    });
