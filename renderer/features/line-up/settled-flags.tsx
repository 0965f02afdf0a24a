import type { FlagView } from '../../../src-core/contract/lesson-view.ts';
import type { StepProps } from '../../client/steps.ts';
import { nameOneFlag } from '../../text/english/flags.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { Button } from '../../ui/button.tsx';
import { getFlagGlyph } from '../../ui/flag-tag.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { settle } from './line-remedies.ts';

/** Flags that the teacher has answered, quiet, each to be opened again. */
export function SettledFlags({
  settled,
  props,
}: {
  readonly settled: readonly FlagView[];
  readonly props: StepProps;
}) {
  const { names, desk } = props;
  if (settled.length === 0) return null;
  return (
    <ol className="quietly" aria-label={LINE_UP.settled}>
      {settled.map(({ key, flag, answer }) => (
        <li key={key}>
          <Glyph name={getFlagGlyph(flag.code)} />
          <span>
            <b>{nameOneFlag(flag)}</b> {names.squad(flag.squad)},{' '}
            {answer?.settled === 'cleared' ? LINE_UP.cleared : LINE_UP.kept}
            {answer?.reason && `: ${answer.reason}`}
          </span>
          <Button look="bare" className="push" onPress={() => void desk.decide(settle(key, null))}>
            {LINE_UP.openAgain}
          </Button>
        </li>
      ))}
    </ol>
  );
}
