import type { Plan } from '../../../src-core/lesson/plan.ts';
import { RUBRIC } from '../../text/english/plan-rubric.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { RANGES } from './plan-edits.ts';
import { addScaleStep, changeScaleStep, removeScaleStep } from './rubric-edits.ts';
import { TypedWord } from './typed-word.tsx';

/** The most marks that a scale may have. */
const MOST = 20;

/** The marks that shares of points become, best first. */
export function ScaleList({
  scale,
  onChange,
}: {
  readonly scale: Plan['scale'];
  readonly onChange: (edit: PlanEdit) => void;
}) {
  return (
    <>
      <h3>{RUBRIC.scale}</h3>
      {scale.length === 0 && <p className="pen">{RUBRIC.noScale}</p>}
      <ul className="scale">
        {scale.map(({ mark, fromPercent }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is known by its place
          <li key={at}>
            <TypedWord
              label={RUBRIC.markOf(mark)}
              shown={mark}
              at={`scale[${at}].mark`}
              type="text"
              value={mark}
              onDecide={(value) => onChange(changeScaleStep(at, { mark: value }))}
            />{' '}
            {RUBRIC.from}{' '}
            <TypedWord
              label={RUBRIC.fromOf(mark)}
              shown={RUBRIC.percent(fromPercent)}
              at={`scale[${at}].fromPercent`}
              type="number"
              range={RANGES.percent}
              value={String(fromPercent)}
              onDecide={(value) => onChange(changeScaleStep(at, { fromPercent: Number(value) }))}
            />
            <button type="button" className="btn bare small" onClick={() => onChange(removeScaleStep(at))}>
              <Glyph name="cross" />
              <span className="vh">{RUBRIC.removeStep(mark)}</span>
            </button>
          </li>
        ))}
      </ul>
      {scale.length < MOST && (
        <Button look="bare" onPress={() => onChange(addScaleStep)}>
          <Glyph name="plus" /> {RUBRIC.addStep}
        </Button>
      )}
    </>
  );
}
