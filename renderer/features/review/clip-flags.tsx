import type { FlagView } from '../../../src-core/contract/lesson-view.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { describeFlag } from '../../text/english/flags.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Button } from '../../ui/button.tsx';
import { FlagTag } from '../../ui/flag-tag.tsx';

/** The flags of the clip on the desk that wait for the teacher, each with its two answers. */
export function ClipFlags({
  flags,
  names,
  onSettle,
}: {
  readonly flags: readonly FlagView[];
  readonly names: LessonNames;
  /** Null: it is not this marker's to settle. */
  readonly onSettle: ((act: JournalAct) => void) | null;
}) {
  return flags.map(({ key, flag }) => {
    const { what } = describeFlag(flag, names);
    const settle = (settled: 'kept' | 'cleared') =>
      onSettle?.({ kind: 'flag-settled', flag: key, settled, reason: null });
    return (
      <section key={key} className="clip-flag" aria-label={REVIEW.flagHead}>
        <FlagTag flag={flag} tone="loud" />
        <p className="read">{what}</p>
        {onSettle && (
          <span className="rem">
            <Button onPress={() => settle('kept')}>{REVIEW.keep}</Button>
            <Button look="bare" onPress={() => settle('cleared')}>
              {REVIEW.clear}
            </Button>
          </span>
        )}
      </section>
    );
  });
}
