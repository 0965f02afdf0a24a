import { count, list, size } from './amounts.ts';

/** All that is said about how long a lesson is kept, and about letting it go. */
export const KEEPING = {
  noDate: 'no last day set',
  until: (until: string) => `kept until ${until}`,
  overdue: (until: string) => `kept until ${until}: that day is over`,
  holds: (files: number, bytes: number) => `${count(files, 'file')}, ${size(bytes)}`,
  notADay: (text: string) => `“${text}” is no day. Write it as 2025-07-31.`,
  unreadable: 'keeping.json cannot be read, so no date holds. Set it again with --until.',
  setHint:
    'Set a last day with --until, by your school’s rule: the end of the term and the time for appeals, say.',
  scopes: {
    films: 'Clips, stills and all that was read from them',
    all: 'Everything that is held of this lesson: clips, stills, marks, roster and plan',
  },
  wouldGo: (what: string, files: number, bytes: number) =>
    `${what}: ${count(files, 'file')}, ${size(bytes)} would be deleted. Nothing is deleted yet.`,
  noMarksAfter: 'No marks can be written once they are gone: hand them in first.',
  nothing: 'There is nothing of that kind to delete.',
  leftAlone: (names: readonly string[]) =>
    `Left alone, for they are not Routemark’s or lead elsewhere: ${list(names)}.`,
  elsewhere:
    'Not reached from here: sheets that were handed in elsewhere, copies and backups, tablets, and what an open window remembers.',
  confirm: (code: string) => `To delete exactly this, add --confirm ${code}. It cannot be undone.`,
  changed: 'That is not the confirmation for what is there now. Nothing was deleted; look at the list again.',
  oneScope: 'Say which: --films for clips and stills, or --all.',
  deleted: (files: number, bytes: number) => `${count(files, 'file')}, ${size(bytes)} deleted.`,
  safe: (files: number, bytes: number) =>
    `Verified here, may be deleted there: ${count(files, 'file')}, ${size(bytes)}. Routemark deletes nothing on a tablet.`,
  keep: (files: number) => `Not here, must stay there: ${count(files, 'file')}.`,
  allSafe: 'All that is there is here.',
} as const;
