import type { PlainDate } from '#kernel';

/** What people at the dock asked for, and what became of it. */
export type LoadingWish =
  | { readonly code: 'kept'; readonly truck: string; readonly pieces: number; readonly loaded: number }
  | {
      readonly code: 'waived';
      readonly piece: string;
      readonly name: string;
      readonly reason: string;
      readonly by: string;
      readonly on: PlainDate;
    }
  | { readonly code: 'taken'; readonly piece: string; readonly by: string; readonly on: PlainDate }
  /** `name`: of the group, where it is a hang by its id. */
  | { readonly code: 'end'; readonly group: string; readonly name?: string; readonly end: 'door' | 'nose' }
  | { readonly code: 'kept-piece-gone'; readonly piece: string; readonly truck: string }
  | { readonly code: 'kept-truck-gone'; readonly piece: string; readonly truck: string }
  | { readonly code: 'waived-piece-gone'; readonly piece: string }
  | { readonly code: 'taken-is-no-case'; readonly piece: string; readonly by: string; readonly on: PlainDate }
  | { readonly code: 'end-group-gone'; readonly group: string; readonly end: 'door' | 'nose' };
