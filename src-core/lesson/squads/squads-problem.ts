/** A rule of the teacher's for forming squads; pupils by their ids. */
export interface GroupingRule {
  readonly kind: 'apart' | 'together';
  readonly pupils: readonly string[];
}

/** Why there are no squads as asked for; which rule is to blame. */
export type SquadsProblem =
  | { readonly code: 'squads-without-pupils' }
  | { readonly code: 'squads-too-many'; readonly squads: number; readonly pupils: number }
  /** The two are to be apart, and the rules for together make them one group. */
  | {
      readonly code: 'squads-rules-contradict';
      readonly pupils: readonly [string, string];
      readonly together: readonly string[];
    }
  /** No squads keep these rules; without any one of them there would be some. */
  | { readonly code: 'squads-rules-too-many'; readonly rules: readonly GroupingRule[] }
  /** None were found, and that there are none was not proved: the rules leave too many ways to try them all. */
  | { readonly code: 'squads-not-found' }
  /** A notice: a rule names somebody who is not in the roster. */
  | { readonly code: 'squads-pupil-unknown'; readonly pupil: string }
  /** A notice: rules for together made squads of sizes that differ by more than one. */
  | { readonly code: 'squads-uneven'; readonly smallest: number; readonly largest: number };
