import { NO_EVIDENCE } from '../../../src-core/app/clip-evidence.ts';
import type { ClipReading } from '../../../src-core/app/clip-reading.ts';
import { gradeClips } from '../../../src-core/app/grade-lesson.ts';
import type { GradedLesson } from '../../../src-core/app/graded-lesson.ts';
import type { CardVerdict } from '../../../src-core/evidence/card-vote.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { Pupil } from '../../../src-core/lesson/roster.ts';
import type { JournalDecision } from '../../../src-core/marking/journal-event.ts';
import { replayJournal } from '../../../src-core/marking/replay.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';
import { buildEvents } from '../marking/harbour.ts';

/** What a test says of a clip; a path is all that is needed. */
export interface SaidClip {
  readonly id: string;
  readonly paths: readonly string[];
  /** Start on 15 May 2025 at the school, `HH:MM:SS`, or null for no date. */
  readonly at?: string | null;
  readonly station?: string;
  readonly clockCard?: boolean;
  readonly change?: Partial<ClipReading>;
}

const FOLDER_SQUADS: Readonly<Record<string, string>> = { Teal: 'teal', Plum: 'plum' };

/** A clip as reading it would have left it: a sound film of 12 s by a Slate, dated firmly. */
function buildClip({ id, paths, at = null, station, clockCard, change }: SaidClip): ClipReading {
  const startMs = at === null ? null : Date.parse(`2025-05-15T${at}-03:00`);
  const clock =
    clockCard && startMs !== null ? { trueStartMs: startMs, spreadSeconds: 0.5, readings: [] } : null;
  const card: CardVerdict = {
    station: station === undefined ? null : { code: station, revision: 1, firstSeenSeconds: 0.4, frames: 5 },
    clock,
    foreign: [],
    problems: [],
  };
  return {
    id,
    copies: paths.map((path) => ({
      squad: FOLDER_SQUADS[path.split('/')[0] ?? ''] ?? '',
      file: { path, name: path.split('/').at(-1) ?? '', sizeBytes: 1, modifiedMs: 0 },
    })),
    facts: {
      container: 'quicktime',
      holds: 'video',
      durationSeconds: 12,
      dates: [],
      modifiedMs: null,
      recorder: { brand: 'qt', make: '', model: '', software: '', android: false },
      codec: 'avc1',
    },
    mediaProblems: [],
    stamp: {
      readMs: startMs,
      local: null,
      source: startMs === null ? 'none' : 'recording-key',
      meaning: 'start',
      startMs,
      uncertaintySeconds: startMs === null ? Number.POSITIVE_INFINITY : 1,
      trust: startMs === null ? 'none' : 'firm',
      reason: startMs === null ? 'nothing-usable' : 'recording-date-written',
      problems: [],
    },
    card,
    lookProblems: [],
    evidence: NO_EVIDENCE,
    ...change,
  };
}

/** A pupil of each squad of the small plan. */
export const PUPILS: readonly Pupil[] = ['teal', 'plum'].map((squad) => ({
  id: `k-${squad}`,
  given: 'Odda',
  family: 'Quillfeather',
  squad,
  attendance: 'present',
  arrived: null,
  stills: true,
}));

/** The small plan graded on these clips, with these decisions. */
export function grade(
  clips: readonly SaidClip[],
  decisions: readonly JournalDecision[] = [],
  plan: Plan = buildSmallPlan(),
  pupils: readonly Pupil[] = PUPILS,
): GradedLesson {
  const journal = replayJournal(buildEvents(decisions));
  const unshown = pupils.filter(({ stills }) => !stills).map(({ squad }) => squad);
  return gradeClips(
    { plan, pupils, unshown, journal, filmsDeletedAt: null },
    { clips: clips.map(buildClip), problems: [] },
  );
}

/** Both squads' clips where everything went well: Teal A then B, Plum B then A. */
export const CLEAN: readonly SaidClip[] = [
  { id: 'tA', paths: ['Teal/IMG_0001.MOV'], at: '09:05:00', station: 'A' },
  { id: 'tB', paths: ['Teal/IMG_0002.MOV'], at: '09:10:00', station: 'B' },
  { id: 'pB', paths: ['Plum/IMG_0501.MOV'], at: '09:05:00', station: 'B' },
  { id: 'pA', paths: ['Plum/IMG_0502.MOV'], at: '09:10:00', station: 'A' },
];
