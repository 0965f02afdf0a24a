import type { EvidenceView, RepsView, UnisonView } from '../contract/evidence-view.ts';
import type { RepsFinding, RepsTrace } from '../evidence/reps-finding.ts';
import type { UnisonFinding } from '../evidence/unison-finding.ts';
import type { ClipId } from '../matching/observation.ts';
import { findShownMovement, findShownUnison } from './clip-evidence.ts';
import type { GradedLesson } from './graded-lesson.ts';
import type { LessonPorts } from './ports.ts';
import { listStrip, readStrip } from './read-strip.ts';

/** A kept picture farther than this from the moment wanted shows another moment; one is cut instead. */
const NEAR_SECONDS = 0.5;

/** Places to which a line is drawn: finer than a screen shows. */
const DRAWN_PLACES = 2;

/**
 * What is drawn beside one clip's film. Reads the evidence cache alone, so that it stands as soon as the clip is
 * opened. Null: the lesson has no such clip.
 */
export async function readEvidenceView(
  ports: Pick<LessonPorts, 'readStrip'>,
  graded: GradedLesson,
  clip: ClipId,
  toBase64: (bytes: Uint8Array) => string,
): Promise<EvidenceView | null> {
  const shown = findShown(graded, clip);
  if (!shown) return null;
  const { reading, movement, unison } = shown;
  const pictures = await readStrip(ports, reading, movement?.reps ?? null);
  return {
    clip,
    strip: listStrip(reading, movement?.reps ?? null).map(({ number, atSeconds }, at) => {
      const kept = pictures[at];
      const isNear = kept !== undefined && Math.abs(kept.shownSeconds - atSeconds) <= NEAR_SECONDS;
      return { number, atSeconds, jpeg: isNear ? toBase64(kept.jpeg) : null };
    }),
    reps: movement && buildReps(movement.reps),
    unison: unison ? { areLanesGiven: shown.lanes !== null, ...buildUnison(unison) } : null,
  };
}

function findShown({ lesson, squads, aside }: GradedLesson, clip: ClipId) {
  for (const { squad, clips } of squads) {
    const own = clips.find(({ reading }) => reading.id === clip);
    if (!own) continue;
    const { reading, assignment } = own;
    const station = assignment.slot === null ? null : (squad.route[assignment.slot] ?? null);
    const lanes = lesson.journal.decisions.lanesOf.get(clip) ?? null;
    return {
      reading,
      movement: findShownMovement(reading.evidence, lesson.plan, station),
      unison: findShownUnison(reading.evidence, lesson.plan, { station, lanes }),
      lanes,
    };
  }
  const reading = aside.find((one) => one.reading.id === clip)?.reading;
  return reading ? { reading, movement: null, unison: null, lanes: null } : null;
}

/** Whether a clip's unison is being measured anew with the teacher's lanes; it is there in a moment. */
export function isMeasuredAnew(graded: GradedLesson, clip: ClipId): boolean {
  const shown = findShown(graded, clip);
  return shown !== null && shown.lanes !== null && shown.unison === undefined;
}

function buildReps({ count, confidence, timesSeconds, spanSeconds, runs, trace }: RepsFinding): RepsView {
  const runsSeconds = runs.flatMap(({ boundariesSeconds }): [number, number][] => {
    const [from] = boundariesSeconds;
    const to = boundariesSeconds.at(-1);
    return from === undefined || to === undefined ? [] : [[from, to]];
  });
  return { count, confidence, timesSeconds, runsSeconds, spanSeconds, trace: buildTrace(trace) };
}

function buildTrace({ rateHz, signal }: RepsTrace): RepsView['trace'] {
  return { rateHz, signal: Array.from(signal, (value) => Number(value.toFixed(DRAWN_PLACES))) };
}

function buildUnison({
  score,
  lanes,
  windows,
  alternating,
  reachSeconds,
}: UnisonFinding): Omit<UnisonView, 'areLanesGiven'> {
  return {
    score,
    lanes: lanes.map(({ x, lagSeconds, repLagsSeconds }) => ({ x, lagSeconds, repLagsSeconds })),
    windows,
    alternating,
    reachSeconds,
  };
}
