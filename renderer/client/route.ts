import { readLastStep } from './last-step.ts';
import { STEPS, type Step } from './steps.ts';

/** What the window shows: the chooser of lessons, or a step of a lesson. Kept in the address, so a reload stays. */
export interface Route {
  /** Null: the chooser. */
  readonly lesson: string | null;
  readonly step: Step;
  readonly target: string | null;
  /** Many lessons are looked back on, instead of the chooser. */
  readonly isLookingBack?: boolean;
}

/** Reads an address such as `#/3f…/line-up/out-of-order:plum:7c1e`, or of a lesson alone; anything else is the chooser. */
export function readRoute(hash: string): Route {
  const [, lesson = '', step = '', target = ''] = hash.split('/');
  if (lesson === 'look-back') return { lesson: null, step: 'bring-in', target: null, isLookingBack: true };
  const known = STEPS.find((each) => each === step);
  if (!/^[0-9a-f]{16}$/.test(lesson)) return { lesson: null, step: 'bring-in', target: null };
  return { lesson, step: known ?? readLastStep(lesson), target: target === '' ? null : decodeTarget(target) };
}

/** The address of a route; {@link readRoute} undoes it. */
export function buildHash({ lesson, step, target, isLookingBack }: Route): string {
  if (lesson === null) return isLookingBack ? '#/look-back' : '#/';
  return `#/${lesson}/${step}${target === null ? '' : `/${encodeURIComponent(target)}`}`;
}

function decodeTarget(target: string): string | null {
  try {
    return decodeURIComponent(target);
  } catch {
    return null;
  }
}
