import type { Decisions } from '../decisions.ts';
import type { JournalAct } from '../journal-event.ts';

/** What a second marker may say: answers, notes and marks of squads. Where and whose a clip is stays the first's word. */
const SECOND_KINDS: readonly JournalAct['kind'][] = [
  'criterion-marked',
  'clip-confirmed',
  'clip-noted',
  'squad-marked',
];

/** Whether an act belongs in a second marking; undo and redo stay within its own journal anyway. */
export function isSecondAct({ kind }: JournalAct): boolean {
  return SECOND_KINDS.includes(kind) || kind === 'undone' || kind === 'redone';
}

/**
 * The lesson's decisions as a second marker is to see them, blind: clips, order, clocks, flags and attendance as
 * they are settled, but not one of the first marker's answers, notes, squad marks or changes of points.
 */
export function getBlindDecisions(first: Decisions, second: Decisions): Decisions {
  const { answers, notes, squadPoints } = second;
  return { ...first, answers, notes, squadPoints, overrides: new Map(), handedIn: [] };
}
