/** A part of what a plan is made from. `bookings`: promises to other tours; `names` stands in a fingerprint that leaves names out. */
export type InputPart =
  | { readonly code: 'tour' }
  | { readonly code: 'spares' }
  | { readonly code: 'other-shows' }
  | { readonly code: 'show' }
  | { readonly code: 'examination-rules' }
  | { readonly code: 'load-rules' }
  | { readonly code: 'systems' }
  | { readonly code: 'bookings' }
  | { readonly code: 'register' }
  | { readonly code: 'loading' }
  | { readonly code: 'names' }
  | { readonly code: 'hang'; readonly id: string }
  | { readonly code: 'model'; readonly of: string; readonly id: string }
  | { readonly code: 'item'; readonly of: string; readonly id: string };

/** What is no longer as it was when a plan was made. */
export type InputChange =
  | { readonly code: 'changed'; readonly part: InputPart }
  | { readonly code: 'new'; readonly part: InputPart }
  | { readonly code: 'gone'; readonly part: InputPart }
  /** Boxes stand on the carts as they do at no point of the list of moves. */
  | { readonly code: 'floor-differs' };

/** One key a part: `tour`, `hang:Main left`, `model:boxes:Plover`. */
export const keyOfPart = (part: InputPart): string =>
  [part.code, ...('of' in part ? [part.of] : []), ...('id' in part ? [part.id] : [])].join(':');

/** The part of a key; undefined for a key of none. */
export function partOfKey(key: string): InputPart | undefined {
  const [code = '', ...rest] = key.split(':');
  if (code === 'hang') return { code, id: rest.join(':') };
  if (code === 'model' || code === 'item') return { code, of: rest[0] ?? '', id: rest.slice(1).join(':') };
  return wholeParts.find((each) => each.code === code);
}

const wholeParts: readonly InputPart[] = [
  { code: 'tour' },
  { code: 'spares' },
  { code: 'other-shows' },
  { code: 'show' },
  { code: 'examination-rules' },
  { code: 'load-rules' },
  { code: 'systems' },
  { code: 'bookings' },
  { code: 'register' },
  { code: 'loading' },
  { code: 'names' },
];
