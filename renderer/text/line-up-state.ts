/** How a clip stands on the loom. */
export type LineUpState =
  | 'in-order'
  | 'out-of-order'
  | 'missing'
  | 'extra'
  | 'retake'
  | 'wrong-place'
  | 'unplaced'
  | 'too-short'
  | 'photo'
  | 'set-aside'
  | 'clock-film'
  | 'waiting';
