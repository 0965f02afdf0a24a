import * as z from 'zod';
import { CARD_LIMITS } from '../card-limits.ts';
import { planSchema, type Station } from '../plan.ts';

const { counting, cycleSeconds, libraryCode } = planSchema.shape.stations.element.shape;
const words = (most: number) => z.string().trim().min(1, 'some-words').max(most);

/** An exercise that a teacher can put on a station; general school exercises, no loads, nothing on neck or head. */
const exercise = z.strictObject({
  code: libraryCode.unwrap(),
  name: words(CARD_LIMITS.exercise),
  /** How one rep is counted, in words for the pupils. */
  countsAs: words(CARD_LIMITS.countsAs),
  counting: counting.unwrap(),
  /** Usual length of one full cycle, shortest and longest, in seconds: common practice, to be adapted to the class. */
  cycleSeconds: cycleSeconds.unwrap(),
  /** What works most, in a few words. */
  muscles: words(40),
  /** What room it takes: on the spot, on the spot with arms and legs wide or on the move, on the ground, at a wall. */
  space: z.enum(['standing', 'wide', 'lying', 'wall']),
  /** What must stand there; left out where nothing must. */
  equipment: words(CARD_LIMITS.equipment).optional(),
  easier: words(CARD_LIMITS.easier),
  harder: words(CARD_LIMITS.harder),
  /** The usual cautions; local code and the teacher's own eye go before them. */
  caution: words(CARD_LIMITS.caution),
});

/** exercises.json, version 1: a library of exercises, the program's own or a teacher's. */
export const librarySchema = z.strictObject({
  format: z.literal('routemark-exercises'),
  version: z.literal(1),
  exercises: z.array(exercise).max(1000),
});

/** One exercise of a library; see {@link librarySchema} for each field's meaning. */
export type LibraryExercise = z.infer<typeof exercise>;

/** An exercise, and whose it is: `own` is the teacher's, in the place of a built-in one where codes are equal. */
export interface ShelvedExercise extends LibraryExercise {
  readonly from: 'built-in' | 'own';
}

/** The built-in exercises with the teacher's own put in by code: equal codes replace, others are added; by name. */
export function mergeLibraries(
  builtIn: readonly LibraryExercise[],
  own: readonly LibraryExercise[],
): readonly ShelvedExercise[] {
  const shelved = new Map<string, ShelvedExercise>();
  for (const one of builtIn) shelved.set(one.code, { ...one, from: 'built-in' });
  for (const one of own) shelved.set(one.code, { ...one, from: 'own' });
  return [...shelved.values()].sort((one, other) => one.name.localeCompare(other.name, 'en'));
}

/** What an exercise puts on a station's card; place, reps, clue and transit are the station's own. */
export function takeExercise(
  exercise: LibraryExercise,
): Pick<
  Station,
  | 'exercise'
  | 'counting'
  | 'cycleSeconds'
  | 'countsAs'
  | 'easier'
  | 'harder'
  | 'caution'
  | 'equipment'
  | 'libraryCode'
> {
  const { code, name, counting, cycleSeconds, countsAs, easier, harder, caution, equipment } = exercise;
  const taken = {
    exercise: name,
    counting,
    cycleSeconds,
    countsAs,
    easier,
    harder,
    caution,
    libraryCode: code,
  };
  return equipment === undefined ? taken : { ...taken, equipment };
}
