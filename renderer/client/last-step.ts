import { STEPS, type Step } from './steps.ts';

const PLACE = 'routemark.last-steps';

/** Lessons whose step is remembered: those of a fortnight. */
const MOST_LESSONS = 50;

/** The step at which this machine last showed a lesson; Bring in where that is not known. */
export function readLastStep(lesson: string): Step {
  const kept = readKept()[lesson];
  return STEPS.find((step) => step === kept) ?? 'bring-in';
}

/** Remembers where a lesson is left off, for a window that opens it later. */
export function keepLastStep(lesson: string, step: Step): void {
  const { [lesson]: _, ...others } = readKept();
  const newestFirst = Object.entries({ [lesson]: step, ...others }).slice(0, MOST_LESSONS);
  try {
    localStorage.setItem(PLACE, JSON.stringify(Object.fromEntries(newestFirst)));
  } catch {
    // A page without storage begins at Bring in.
  }
}

function readKept(): Readonly<Record<string, unknown>> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PLACE) ?? '{}');
    return typeof kept === 'object' && kept !== null ? { ...kept } : {};
  } catch {
    return {};
  }
}
