/** What stands in one part of a lesson folder. */
export interface LessonPartFacts {
  /**
   * `films`: clips, and all that was cut or read from them. `records`: what was planned and decided. `made`: written
   * from these on request, as more may be. `log`: outlives the rest.
   */
  readonly holds: 'films' | 'records' | 'made' | 'log';
  /** Pupils are shown or named in it, or marked. */
  readonly isOfPupils: boolean;
}

const RECORDS = { holds: 'records', isOfPupils: true } as const;
const PLAIN_RECORDS = { holds: 'records', isOfPupils: false } as const;
const FILMS = { holds: 'films', isOfPupils: true } as const;
const MADE = { holds: 'made', isOfPupils: true } as const;

/** The one list of what a lesson folder is made of; names without a point are folders. */
export const LESSON_PARTS = {
  clips: FILMS,
  evidence: FILMS,
  'roster.csv': RECORDS,
  'marks.jsonl': RECORDS,
  'plan.json': RECORDS,
  versions: RECORDS,
  'second-marks': RECORDS,
  photos: PLAIN_RECORDS,
  'keeping.json': PLAIN_RECORDS,
  'summary.json': PLAIN_RECORDS,
  'hand-in': MADE,
  records: MADE,
  print: MADE,
  'deletions.jsonl': { holds: 'log', isOfPupils: false },
} as const satisfies Readonly<Record<string, LessonPartFacts>>;

/** The name of a part. */
export type LessonPart = keyof typeof LESSON_PARTS;

/** The part of this name, whatever its capitals, for some disks know none; null where a lesson has no such part. */
export function findLessonPart(name: string): LessonPart | null {
  const plain = name.toLowerCase();
  return Object.hasOwn(LESSON_PARTS, plain) ? (plain as LessonPart) : null;
}

/** The parts that hold one of these, in the order of the list. */
export function listLessonParts(...holds: readonly LessonPartFacts['holds'][]): readonly LessonPart[] {
  const parts = Object.entries(LESSON_PARTS) as [LessonPart, LessonPartFacts][];
  return parts.filter(([, part]) => holds.includes(part.holds)).map(([name]) => name);
}
