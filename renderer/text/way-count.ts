/** What is left to do at a step of the way. */
export type WayCount =
  | { readonly kind: 'ready' | 'no-clips' | 'all-placed' | 'in-order' | 'all-inked' | 'settled' }
  | { readonly kind: 'not-yet' | 'handed-in' }
  | { readonly kind: 'problems' | 'to-place' | 'flags' | 'left' | 'to-settle'; readonly amount: number }
  | { readonly kind: 'reading'; readonly done: number; readonly total: number };
