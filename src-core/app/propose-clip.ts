import type { GivenLanes } from '../evidence/unison-finding.ts';
import type { Plan } from '../lesson/plan.ts';
import type { Proposal } from '../marking/proposal.ts';
import { proposeExercise } from '../marking/propose-exercise.ts';
import { type PlaceProposal, proposePlace } from '../marking/propose-place.ts';
import { proposeReps } from '../marking/propose-reps.ts';
import { proposeTogether } from '../marking/propose-together.ts';
import type { ClipAssignment } from '../matching/assignment.ts';
import { findMovement, findShownUnison, getMovementOptions } from './clip-evidence.ts';
import type { ClipReading } from './clip-reading.ts';
import type { ObservedClip } from './observe-clips.ts';

/** A clip of a route with all that speaks for or against its criteria. */
export interface ProposedClip {
  readonly reading: ClipReading;
  readonly assignment: ClipAssignment;
  readonly observed: ObservedClip | undefined;
  /** The teacher's word on the performers; null: estimated. */
  readonly lanes: GivenLanes | null;
  /** Pupils of the squad who should be seen in it. */
  readonly pupils: number;
}

/** What a criterion can be spoken for by; the rest is the teacher's eye alone. */
type Check = Exclude<Plan['rubric']['clip'][number]['checks'], 'judgement'>;

type CriterionAnswer = Omit<Proposal, 'criterion'> | null;

/** What the machine suggests for a clip's criteria; a criterion it knows nothing of is left to the teacher. */
export function proposeClip(plan: Plan, route: readonly string[], clip: ProposedClip): readonly Proposal[] {
  const answers = getAnswers(plan, route, clip);
  return plan.rubric.clip.flatMap(({ code, checks }): Proposal[] => {
    const answer = checks === 'judgement' ? null : answers[checks];
    return answer ? [{ criterion: code, ...answer }] : [];
  });
}

function getAnswers(
  plan: Plan,
  route: readonly string[],
  { reading, assignment, observed, lanes, pupils }: ProposedClip,
): Readonly<Record<Check, CriterionAnswer>> {
  const expected = assignment.slot === null ? null : (route[assignment.slot] ?? null);
  const place: PlaceProposal | null = proposePlace(assignment, expected, {
    cardAtSeconds: reading.card?.station?.firstSeenSeconds ?? null,
    lookAlike: observed?.lookAlike ?? null,
  });
  const station = plan.stations.find(({ code }) => code === expected);
  if (!station) return { place, exercise: null, reps: null, together: null };
  const { evidence } = reading;
  const free = findMovement(evidence, getMovementOptions(plan, null));
  const own = findMovement(evidence, getMovementOptions(plan, station.code));
  const unison = findShownUnison(evidence, plan, { station: station.code, lanes });
  const context = { usualSeconds: station.cycleSeconds ?? null, atPlace: place?.met ?? null };
  return {
    place,
    exercise: free ? proposeExercise(free.reps, context) : null,
    reps: own ? proposeReps(own.reps, station.reps) : null,
    together: unison ? proposeTogether(unison, lanes === null ? pupils : null) : null,
  };
}
