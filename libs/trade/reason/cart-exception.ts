/** What is not as usual in a cart load. */
export type CartException =
  | { readonly code: 'part-load'; readonly boxes: number; readonly capacity: number }
  | { readonly code: 'mixed-models'; readonly models: readonly string[] }
  | { readonly code: 'no-box'; readonly slot: number; readonly model: string };
