import { type Ref, useId } from 'react';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { explainProposal } from '../../text/english/proposals.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Glyph } from '../../ui/glyph.tsx';
import { KeyCap } from '../../ui/key-cap.tsx';
import type { KeyId } from '../../ui/keys/key-table.ts';
import { Sure } from '../../ui/marks.tsx';
import { explainSilence } from './explain-silence.ts';
import type { CriterionLine } from './score-sheet.ts';

/** One criterion: Yes and No, the pencilled one hatched, the reason, and how sure the machine is. */
export function CriterionRow({
  line,
  number,
  names,
  clip,
  onAnswer,
  ref,
}: {
  readonly line: CriterionLine;
  /** What it is and how far its pictures were looked at: why nothing is proposed. */
  readonly clip: ClipView;
  readonly number: number;
  readonly names: LessonNames;
  readonly onAnswer: (met: boolean) => void;
  /** The box that takes the focus when this criterion is asked for. */
  readonly ref?: Ref<HTMLInputElement>;
}) {
  const head = useId();
  const { label, proposed, shown, decided } = line;
  const isOverruled = proposed !== null && decided !== null && proposed.met !== decided;
  const reason = proposed ? explainProposal(proposed.reason, names) : explainSilence(line.checks, clip);
  return (
    <li className={`cr ${shown === null ? 'look' : ''}`}>
      <div className="cn">
        <KeyCap id={`criterion-${number}` as KeyId} />
        <h3 id={head}>{label}</h3>
        <div className="yn" role="radiogroup" aria-labelledby={head}>
          <Answer {...{ line, met: true, onAnswer, name: head }} ref={ref} />
          <Answer {...{ line, met: false, onAnswer, name: head }} />
        </div>
      </div>
      <div className="why">
        <p className="pen">{reason.charAt(0).toUpperCase() + reason.slice(1)}</p>
        {proposed && (
          <span className="by">
            <Sure share={proposed.confidence} words={REVIEW.confidence(proposed.confidence)} />
            {isOverruled && <span className="cap">{REVIEW.overruled}</span>}
          </span>
        )}
      </div>
    </li>
  );
}

function Answer({
  line,
  met,
  name,
  onAnswer,
  ref,
}: {
  readonly line: CriterionLine;
  readonly met: boolean;
  readonly name: string;
  readonly onAnswer: (met: boolean) => void;
  readonly ref?: Ref<HTMLInputElement> | undefined;
}) {
  const isProposed = line.proposed?.met === met;
  return (
    <label className={isProposed ? 'prop' : ''}>
      <input
        type="radio"
        name={name}
        data-keys="through"
        checked={line.decided === met}
        onChange={() => onAnswer(met)}
        ref={ref ?? null}
      />
      <span className="tb">
        <Glyph name={met ? 'tick' : 'cross'} />
      </span>
      {met ? REVIEW.yes : REVIEW.no}
      {isProposed && line.decided === null && <span className="vh">{REVIEW.byMachine}</span>}
    </label>
  );
}
