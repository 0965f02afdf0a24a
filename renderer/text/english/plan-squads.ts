/** Pinnie colours as squads are first called after them. */
export const BIB_NAMES = {
  teal: 'Teal',
  amber: 'Amber',
  plum: 'Plum',
  moss: 'Moss',
  slate: 'Slate',
  coral: 'Coral',
  navy: 'Navy',
  chalk: 'Chalk',
} as const;
