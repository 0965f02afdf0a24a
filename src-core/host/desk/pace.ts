import type { Progress } from '../../contract/progress.ts';
import { MS_PER_SECOND, type Seconds } from '../../platform/units.ts';

/** Before this much time has passed in a step, its pace is chance. */
const FIRST_GUESS_MS = 1500;

/**
 * A guess of the time that is left in the present step, from its own pace so far; bytes count where they are told.
 * Null while there is too little to go by. `nowMs` may count from anywhere.
 */
export function openPace(nowMs: () => number): (progress: Progress) => Seconds | null {
  let step: Progress['step'] | null = null;
  let beganMs = 0;
  let doneBefore = 0;
  return (progress) => {
    const { done, total } = {
      done: progress.doneBytes ?? progress.done,
      total: progress.totalBytes ?? progress.total,
    };
    if (progress.step !== step) {
      step = progress.step;
      beganMs = nowMs();
      doneBefore = done;
    }
    const spentMs = nowMs() - beganMs;
    if (done >= total) return 0;
    if (spentMs < FIRST_GUESS_MS || done <= doneBefore) return null;
    return Math.ceil((spentMs * (total - done)) / (done - doneBefore) / MS_PER_SECOND);
  };
}
