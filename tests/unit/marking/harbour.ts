import type { Plan } from '../../../src-core/lesson/plan.ts';
import { planSchema } from '../../../src-core/lesson/plan.ts';
import type { Pupil } from '../../../src-core/lesson/roster.ts';
import { buildNoDecisions, type Decisions } from '../../../src-core/marking/decisions.ts';
import type { JournalAct, JournalDecision, JournalEvent } from '../../../src-core/marking/journal-event.ts';
import type { Proposal } from '../../../src-core/marking/proposal.ts';
import { replayJournal } from '../../../src-core/marking/replay.ts';
import type { ScoreInput, SlotResult } from '../../../src-core/marking/score-input.ts';

const CRITERIA = ['place', 'exercise', 'reps', 'together'] as const;

/** The Harbour circuit with one squad of seven slots: one point a clip, two for care, two for teamwork. */
export function buildHarbourPlan(change: Record<string, unknown> = {}): Plan {
  return planSchema.parse({
    format: 'routemark-plan',
    version: 2,
    lesson: {
      code: 'HARBOUR',
      revision: 1,
      title: 'Harbour circuit',
      school: 'Cobble Quay School',
      className: '9 Kelp',
      date: '2025-05-15',
      period: 'p3',
    },
    zone: 'America/Halifax',
    periods: [{ code: 'p3', start: '10:45', end: '11:30' }],
    stations: [...'ABCDEFG'].map((code) => ({ code, place: `Place ${code}`, exercise: 'Hops', reps: 10 })),
    squads: [
      {
        code: 'plum',
        name: 'Plum',
        pinnie: { name: 'plum', colour: '#7B3F7A' },
        tablet: 'tablet 2',
        startsAt: 'C',
        route: [...'CDEFGAB'],
      },
    ],
    rubric: {
      clip: CRITERIA.map((code) => ({ code, label: code, checks: code })),
      squad: [
        { code: 'care', label: 'Care of kit', maxPoints: 2 },
        { code: 'team', label: 'Teamwork', maxPoints: 2 },
      ],
    },
    orderRule: 'void-clip',
    scale: [
      { mark: '4', fromPercent: 90 },
      { mark: '3', fromPercent: 70 },
      { mark: '2', fromPercent: 50 },
      { mark: '1', fromPercent: 0 },
    ],
    ...change,
  });
}

/** When Plum filmed each slot (local time, 15 May, UTC−3): G at 11:02 before F at 11:07. */
const FILMED = ['10:47', '10:52', '10:58', '11:07', '11:02', '11:12', '11:18'];
const POSITIONS = [0, 1, 2, 4, 3, 5, 6];

/** The flag that calls G out of order. */
export const G_FLAG = 'out-of-order:plum:clip-G';

/** Plum's route as the matcher sees it: G is called out of order. */
export const PLUM_SLOTS: readonly SlotResult[] = [...'CDEFGAB'].map((station, slot) => ({
  slot,
  station,
  clip: `clip-${station}`,
  startMs: Date.parse(`2025-05-15T${FILMED[slot]}:20-03:00`),
  position: POSITIONS[slot] ?? null,
  orderFlag: station === 'G' ? G_FLAG : null,
}));

/** Every criterion met, but A is not together. */
const PLUM_PROPOSALS: ReadonlyMap<string, readonly Proposal[]> = new Map(
  [...'CDEFGAB'].map((station) => [
    `clip-${station}`,
    CRITERIA.map((criterion) => ({
      criterion,
      met: !(station === 'A' && criterion === 'together'),
      confidence: 0.8,
      reason: { code: 'only-slot-left', station: 'A' },
    })),
  ]),
);

/** A pupil of Plum, present unless told otherwise. */
export function buildPupil(id: string, change: Partial<Pupil> = {}): Pupil {
  return {
    id,
    given: 'Odda',
    family: 'Quillfeather',
    squad: 'plum',
    attendance: 'present',
    arrived: null,
    stills: true,
    ...change,
  };
}

/** The whole input; what a test does not name is as drawn above, with care 2 and teamwork 1 decided. */
export function buildInput(change: Partial<ScoreInput> = {}): ScoreInput {
  return {
    plan: buildHarbourPlan(),
    pupils: [buildPupil('k-0412')],
    squads: [{ squad: 'plum', slots: PLUM_SLOTS }],
    proposals: PLUM_PROPOSALS,
    decisions: decide(),
    flags: [{ key: G_FLAG, squad: 'plum', clip: 'clip-G', slot: 4 }],
    ...change,
  };
}

const CARE_AND_TEAM: readonly JournalDecision[] = [
  { kind: 'squad-marked', squad: 'plum', criterion: 'care', points: 2 },
  { kind: 'squad-marked', squad: 'plum', criterion: 'team', points: 1 },
];

/** Care 2 and teamwork 1, and whatever else is decided. */
export function decide(...more: readonly JournalDecision[]): Decisions {
  return replayJournal(buildEvents([...CARE_AND_TEAM, ...more])).decisions;
}

/** Nothing decided at all. */
export const UNDECIDED = buildNoDecisions();

/** Acts as events, a second apart. */
export function buildEvents(acts: readonly JournalAct[], from = 0): readonly JournalEvent[] {
  return acts.map((what, index) => buildTestEvent(from + index, what));
}

/** The n-th event of a journal. */
export function buildTestEvent(n: number, what: JournalAct): JournalEvent {
  const at = new Date(Date.parse('2025-05-15T14:00:00.000Z') + n * 1000).toISOString();
  return { id: getTestId(n), at, who: 'teacher', what, was: null };
}

/** The id of the n-th event: a ULID. */
export function getTestId(n: number): string {
  return `01JTTTTTTT${String(n).padStart(16, '0')}`;
}

/** Confirms a clip with every criterion met, but for those named. */
export function confirm(clip: string, ...unmet: readonly string[]): JournalDecision {
  const answers = Object.fromEntries(CRITERIA.map((criterion) => [criterion, !unmet.includes(criterion)]));
  return { kind: 'clip-confirmed', clip, answers };
}
