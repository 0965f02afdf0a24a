import type { LessonNames } from '../../client/lesson-names.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import { StopNote } from '../../ui/stop-note.tsx';
import type { BringDone } from './bring-job.ts';
import { groupLeft } from './group-left.ts';
import type { Bring } from './use-bring.ts';

/** What did not come in with the last bringing, and why; nothing where all came. */
export function BringLeft({
  done,
  names,
  ways,
  onPutAway,
}: {
  readonly done: BringDone;
  readonly names: LessonNames;
  readonly ways: Bring;
  readonly onPutAway: () => void;
}) {
  const { problems, folder, copied, alreadyThere } = done;
  const left = groupLeft(problems);
  const isNothing = copied + alreadyThere === 0;
  if (left.length === 0 && !isNothing) return null;
  const advice = left.map(({ shown, more }) => {
    const said = shown.map((problem) => describeProblem(problem, names));
    const what = [...said.map((one) => one.what), ...(more > 0 ? [BRING_IN.leftMore(more)] : [])].join(' ');
    return {
      what,
      todo: shown[0]?.code === 'clip-of-nobody' ? BRING_IN.nobodyLeft : (said[0]?.todo ?? null),
    };
  });
  return (
    <StopNote
      title={isNothing ? BRING_IN.nothingCame : BRING_IN.notAllCame}
      advice={advice.length > 0 ? advice : [{ what: BRING_IN.noClipsThere, todo: BRING_IN.noClipsThereTodo }]}
    >
      <Button look="ink" onPress={() => ways.choose('copy')}>
        {BRING_IN.another}
      </Button>
      {folder && <Button onPress={() => ways.readInPlace(folder)}>{BRING_IN.inPlaceInstead}</Button>}
      <Button look="bare" onPress={onPutAway}>
        {BRING_IN.putAway}
      </Button>
    </StopNote>
  );
}
