import type { Series } from '../../../src-core/marking/look-back/build-series.ts';
import type { LookBack, Strand } from '../../../src-core/marking/look-back/look-back.ts';
import { LOOK_BACK } from '../../text/english/look-back.ts';

const NO_BREAKS: readonly boolean[] = [];

/** A row of a table: the class, or one of its squads. */
export interface StrandRow {
  readonly key: string;
  readonly name: string;
  readonly strand: Strand;
  readonly breaks: readonly boolean[];
  /** Null: the class. */
  readonly bib: (LookBack['squads'][number]['pinnie'] & { readonly at: number }) | null;
}

/** The class, then its squads in their order. */
export function listRows({ whole, squads }: LookBack): readonly StrandRow[] {
  return [
    { key: '', name: LOOK_BACK.wholeClass, strand: whole, breaks: NO_BREAKS, bib: null },
    ...squads.map((squad, at) => ({
      key: squad.code,
      name: squad.name,
      strand: squad,
      breaks: squad.isNewlyMade,
      bib: { ...squad.pinnie, at },
    })),
  ];
}

/** What can be chosen and followed: clips' criteria, then the squads' own. */
export function listCriteria({ criteria, squadCriteria }: LookBack) {
  return [
    ...criteria.map(({ code, label }, at) => ({
      key: code,
      label,
      get: (strand: Strand): Series | undefined => strand.criteria[at],
    })),
    ...squadCriteria.map(({ code, label }, at) => ({
      key: `squad:${code}`,
      label,
      get: (strand: Strand): Series | undefined => strand.squadCriteria[at],
    })),
  ];
}

/** The most that any of some series comes to, 1 at least: the upper edge of their plots. */
export function findTop(...series: readonly Series[]): number {
  return Math.max(1, ...series.flatMap(({ points }) => points.map(({ value }) => value ?? 0)));
}
