import type { SquadCode } from '../../../src-core/lesson/plan.ts';
import type { PupilScore } from '../../../src-core/marking/points.ts';
import type { SquadRow } from './score-table.ts';

/** The line of the table that is asked about. */
export type Selection =
  | { readonly kind: 'squad'; readonly squad: SquadCode }
  | { readonly kind: 'pupil'; readonly pupil: string };

/** The same line as it stands now; null where it went away. */
export type Selected =
  | { readonly kind: 'squad'; readonly row: SquadRow }
  | { readonly kind: 'pupil'; readonly row: SquadRow; readonly score: PupilScore };

/** Finds what is selected in the table. */
export function findSelected(rows: readonly SquadRow[], selection: Selection | null): Selected | null {
  if (!selection) return null;
  for (const row of rows) {
    if (selection.kind === 'squad' && row.squad === selection.squad) return { kind: 'squad', row };
    const score =
      selection.kind === 'pupil' ? row.pupils.find(({ pupil }) => pupil.id === selection.pupil) : undefined;
    if (score) return { kind: 'pupil', row, score };
  }
  return null;
}
