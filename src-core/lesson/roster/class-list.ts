/** A pupil as a school's list names one. */
export interface ListedPupil {
  /** The school's own id, the same from list to list; a merge goes by it. */
  readonly id: string;
  readonly given: string;
  readonly family: string;
}

/** Which column of a CSV holds what, by head as written. */
export interface ColumnChoice {
  readonly id: string | null;
  readonly given: string | null;
  readonly family: string | null;
}
