import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { StepProps } from '../../client/steps.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { ScreenHead } from '../../ui/sheet.tsx';
import type { BringState } from './bring-job.ts';
import type { BringWay } from './use-bring.ts';

/** Where on Plan it is said how far outside its bell a period still owns a clip. */
const LIMITS = 'tolerances.periodGraceMinutes';

/** What is here in one sentence, and the ways to bring in more. */
export function BringHead({
  lesson,
  bring,
  isBusy,
  onChoose,
  go,
  onReadAgain,
}: {
  readonly lesson: LessonView;
  readonly bring: BringState;
  readonly isBusy: boolean;
  readonly onChoose: (way: BringWay) => void;
  readonly go: StepProps['go'];
  readonly onReadAgain: () => unknown;
}) {
  return (
    <ScreenHead title={STEP_NAMES['bring-in']} sentence={getSentence(lesson, bring, isBusy)}>
      <Button onPress={() => onChoose('copy')} isDisabled={bring.kind === 'running'} keyId="add-folders">
        <Glyph name="folder" /> {BRING_IN.add}
      </Button>
      <Button onPress={() => onChoose('in-place')} isDisabled={isBusy}>
        {BRING_IN.inPlace}
      </Button>
      <Button onPress={onReadAgain} isDisabled={isBusy}>
        {BRING_IN.readAgain}
      </Button>
      <Button onPress={() => go('plan', LIMITS)}>{BRING_IN.limits}</Button>
    </ScreenHead>
  );
}

function getSentence({ clips, plan }: LessonView, bring: BringState, isBusy: boolean): string {
  if (bring.kind === 'stopped') return BRING_IN.stoppedSentence;
  if (clips.length === 0) return isBusy ? BRING_IN.looking : BRING_IN.emptySentence;
  const folders = new Set(clips.flatMap(({ copies }) => copies.map(({ path }) => path.split('/')[0])));
  const own = clips.filter(({ time }) => time?.period === plan.lesson.period);
  return BRING_IN.sentence(folders.size, clips.length, own.length);
}
