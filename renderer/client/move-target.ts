const MOVE = 'move:';

/** What Line up is asked for where a clip is to be put into another slot. */
export function buildMoveTarget(clip: string): string {
  return MOVE + clip;
}

/** The clip that is to be moved; null: something else is asked for, or nothing. */
export function readMoveTarget(target: string | null): string | null {
  return target?.startsWith(MOVE) ? target.slice(MOVE.length) : null;
}
