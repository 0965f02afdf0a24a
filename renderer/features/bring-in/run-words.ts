import type { ReadingView } from '../../../src-core/contract/lesson-view.ts';
import type { RunningJob } from '../../client/lesson-state.ts';
import { withTimeLeft } from '../../text/english/amounts.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import type { BringState } from './bring-job.ts';

/** A piece of work in words and as a share, 0 to 1. */
export interface RunPart {
  readonly key: 'reading' | 'bring';
  readonly words: string;
  readonly share: number;
}

/** How far reading has come; null where nothing is being read. */
export function describeReading(view: ReadingView, job: RunningJob | null): RunPart | null {
  if (!job) return null;
  const { done, total, step } = job.progress;
  if (total === 0) return { key: 'reading', words: BRING_IN.looking, share: 0 };
  // Stamps are all read, and the first clip's cards are not found yet.
  if (step === 'read' && view.state === 'cards')
    return { key: 'reading', words: BRING_IN.cardsNext(done), share: 0 };
  const words = step === 'cards' ? BRING_IN.cardsRead : BRING_IN.stampsRead;
  return { key: 'reading', words: withTimeLeft(words(done, total), job.secondsLeft), share: done / total };
}

/** How far copying has come; null where nothing is being copied. */
export function describeBring(bring: BringState): RunPart | null {
  if (bring.kind !== 'running') return null;
  const { progress, phase, secondsLeft } = bring;
  if (!progress) return { key: 'bring', words: BRING_IN.looking, share: 0 };
  const { doneBytes = 0, totalBytes = 0, done, total } = progress;
  const isInBytes = totalBytes > 0;
  const amounts = isInBytes
    ? ([BRING_IN.size(doneBytes), BRING_IN.size(totalBytes)] as const)
    : ([String(done), String(total)] as const);
  const words = phase === 'sending' ? BRING_IN.sending(...amounts) : BRING_IN.copying(...amounts);
  const share = isInBytes ? doneBytes / totalBytes : done / Math.max(1, total);
  return { key: 'bring', words: withTimeLeft(words, secondsLeft), share };
}
