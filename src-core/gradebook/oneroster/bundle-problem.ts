import type { BundleFault } from './bundle-fault.ts';

/** Why marks were not written as OneRoster files, or what is different in them. */
export type BundleProblem =
  | BundleFault
  /** No set of the school's was chosen to build on. */
  | { readonly code: 'bundle-school-missing' }
  /** Not a zip archive or folder that can be read. */
  | { readonly code: 'bundle-unreadable'; readonly name: string }
  /** More bytes, packed or unpacked, than a school's set has. */
  | { readonly code: 'bundle-too-large'; readonly name: string; readonly limitBytes: number }
  /** A file without which a class cannot be told is not in the school's set. */
  | { readonly code: 'bundle-table-missing'; readonly file: string }
  /** No class of the school's set holds a pupil of the roster, or the one asked for is not there. */
  | { readonly code: 'bundle-class-unknown'; readonly classId: string | null }
  /** Several classes hold as many pupils of the roster; one must be named. */
  | { readonly code: 'bundle-class-open'; readonly classIds: readonly string[] }
  /** The school's set has no category with this id. */
  | { readonly code: 'bundle-category-unknown'; readonly category: string }
  /** The school's set lacks a row that another one points to. */
  | { readonly code: 'bundle-row-missing'; readonly file: string; readonly id: string }
  /** Not enrolled in the class by the school's set: left out, for no gradebook would know the pupil. */
  | { readonly code: 'bundle-pupil-unknown'; readonly pupil: string }
  /** Version 1.1 has no result without a score: the pupil's is left out. */
  | { readonly code: 'bundle-result-left-out'; readonly pupil: string; readonly status: string }
  /** A text that a spreadsheet would run, or with a carriage return, was changed; ids never are. */
  | {
      readonly code: 'bundle-text-made-safe';
      readonly file: string;
      readonly id: string;
      readonly column: string;
    };
