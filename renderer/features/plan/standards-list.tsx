import { useState } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import {
  parseStandards,
  SHAPE_STANDARDS,
  type StandardsProblem,
} from '../../../src-core/lesson/standards.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { RUBRIC } from '../../text/english/plan-rubric.ts';
import { Button } from '../../ui/button.tsx';
import { FileWord } from '../../ui/file-word.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { ProblemLines } from '../../ui/problem-lines.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { addStandards, removeStandard } from './rubric-edits.ts';

/** Curriculum standards that criteria can be tagged with: the four of SHAPE America, or a list of the teacher's own. */
export function StandardsList({
  plan: { standards },
  names,
  onChange,
}: {
  readonly plan: Plan;
  readonly names: LessonNames;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const [problems, setProblems] = useState<readonly StandardsProblem[]>([]);
  const take = async (file: File) => {
    const read = parseStandards(await file.text());
    setProblems(read.problems);
    if (read.standards.length > 0) onChange(addStandards([...read.standards]));
  };
  const hasShape = SHAPE_STANDARDS.every(({ code }) => standards.some((one) => one.code === code));
  return (
    <>
      <h3 data-at="standards">{RUBRIC.standards}</h3>
      {standards.length === 0 && <p className="pen">{RUBRIC.noStandards}</p>}
      <ul className="standards">
        {standards.map(({ code, text, source }) => (
          <li key={code} title={source}>
            <b>{code}</b> {text}
            <span className="vh"> ({source})</span>
            <button type="button" className="btn bare small" onClick={() => onChange(removeStandard(code))}>
              <Glyph name="cross" />
              <span className="vh">{RUBRIC.removeStandard(code)}</span>
            </button>
          </li>
        ))}
      </ul>
      <ProblemLines problems={problems} names={names} />
      <div className="rem">
        {!hasShape && (
          <Button look="bare" onPress={() => onChange(addStandards([...SHAPE_STANDARDS]))}>
            <Glyph name="plus" /> {RUBRIC.takeShape}
          </Button>
        )}
        <FileWord word={RUBRIC.importStandards} accept=".csv,text/csv" onTake={(file) => void take(file)} />
      </div>
    </>
  );
}
