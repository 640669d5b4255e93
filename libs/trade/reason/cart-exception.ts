/** What is not as usual in a cart load. */
export type CartException =
  | { readonly code: 'part-load'; readonly boxes: number; readonly capacity: number }
  /** None is left that may carry it; its boxes are not looked for. */
  | { readonly code: 'no-cart' }
  | { readonly code: 'mixed-models'; readonly models: readonly string[] }
  | { readonly code: 'no-box'; readonly slot: number; readonly model: string };
