import type { RefObject } from 'react';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { KeyBindings } from '../../ui/keys/use-keys.ts';
import { useKeys } from '../../ui/keys/use-keys.ts';
import type { ScoreActs } from './score-panel.tsx';
import { flip } from './score-sheet.ts';

/** The keys that mark the clip on the desk: 1 to 9, Enter, Y and N. */
export function useScoreKeys({
  clip,
  acts,
  note,
}: {
  readonly clip: ClipView;
  readonly acts: ScoreActs;
  readonly note: RefObject<HTMLInputElement | null>;
}): void {
  const numbers = (clip.criteria ?? []).map((mark, at) => [
    `criterion-${at + 1}`,
    () => acts.decide(flip(clip, mark)),
  ]);
  useKeys({
    ...(Object.fromEntries(numbers) as KeyBindings),
    confirm: acts.confirm,
    'yes-to-rest': () => acts.answerRest(true),
    'no-to-rest': () => acts.answerRest(false),
    note: () => note.current?.focus(),
  });
}
