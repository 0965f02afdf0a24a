/** What is wrong with a class list that is to be taken in; lines count from 1, the heading among them. */
export type RosterImportProblem =
  /** Nothing in what was handed over is a class list: neither a CSV with a heading nor a set of OneRoster files. */
  | { readonly code: 'import-unreadable'; readonly name: string }
  /** More bytes than any class list has. */
  | { readonly code: 'import-too-large'; readonly name: string; readonly limitBytes: number }
  | { readonly code: 'import-not-utf8'; readonly name: string }
  /** No column could be taken for this; the heads that are there. */
  | {
      readonly code: 'import-column-missing';
      readonly column: 'id' | 'given' | 'family';
      readonly heads: readonly string[];
    }
  | { readonly code: 'import-line-incomplete'; readonly line: number }
  | { readonly code: 'import-id-twice'; readonly line: number; readonly id: string }
  /** A OneRoster set says that it is of a version that is not read. */
  | { readonly code: 'import-version-unknown'; readonly version: string }
  | { readonly code: 'import-file-missing'; readonly name: string }
  /** A file of a OneRoster set lacks a column that its version requires. */
  | { readonly code: 'import-file-column-missing'; readonly name: string; readonly column: string }
  /** Which of the set's classes is meant must be said. */
  | { readonly code: 'import-class-open'; readonly classes: number }
  | { readonly code: 'import-class-unknown'; readonly classId: string }
  /** A class without pupils: nothing is changed, for that would empty the roster. */
  | { readonly code: 'import-empty' }
  /** A notice: an enrolment names somebody whom users.csv does not have. */
  | { readonly code: 'import-user-missing'; readonly id: string };
