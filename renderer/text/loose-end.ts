/** Something that a plan still lacks though it can be saved without it, and where on the sheet it is put right. */
export type LooseEnd = { readonly path: string } & (
  | { readonly kind: 'no-place'; readonly station: string }
  | { readonly kind: 'no-exercise'; readonly station: string }
  | { readonly kind: 'on-no-route'; readonly station: string }
  | { readonly kind: 'no-pupils' }
  | { readonly kind: 'squad-empty'; readonly squad: string }
);
