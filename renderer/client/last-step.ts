import { keepRecord, readRecord } from '../ui/kept-record.ts';
import { STEPS, type Step } from './steps.ts';

const PLACE = 'routemark.last-steps';

/** Lessons whose step is remembered: those of a fortnight. */
const MOST_LESSONS = 50;

/** The step at which this machine last showed a lesson; Bring in where that is not known. */
export function readLastStep(lesson: string): Step {
  const kept = readRecord(PLACE)[lesson];
  return STEPS.find((step) => step === kept) ?? 'bring-in';
}

/** Remembers where a lesson is left off, for a window that opens it later. */
export function keepLastStep(lesson: string, step: Step): void {
  const { [lesson]: _, ...others } = readRecord(PLACE);
  const newestFirst = Object.entries({ [lesson]: step, ...others }).slice(0, MOST_LESSONS);
  keepRecord(PLACE, Object.fromEntries(newestFirst));
}
