import { useState } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { SCORES } from '../../text/english/scores.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { SlipDialog } from '../../ui/slip-dialog.tsx';

type Step = { readonly id: number; readonly mark: string; readonly fromPercent: string };

/** The cut points of the scale, edited and written into the plan. */
export function CutPoints({
  scale,
  onSave,
  onClose,
}: {
  readonly scale: Plan['scale'];
  readonly onSave: (scale: Plan['scale']) => void;
  readonly onClose: () => void;
}) {
  const [steps, setSteps] = useState<readonly Step[]>(() =>
    scale.map(({ mark, fromPercent }, id) => ({ id, mark, fromPercent: String(fromPercent) })),
  );
  const change = (id: number, part: Partial<Step>) =>
    setSteps((now) => now.map((step) => (step.id === id ? { ...step, ...part } : step)));
  const add = () =>
    setSteps((now) => [
      ...now,
      { id: Math.max(-1, ...now.map(({ id }) => id)) + 1, mark: '', fromPercent: '0' },
    ]);
  return (
    <SlipDialog title={SCORES.cutTitle} onClose={onClose}>
      <form
        className="adjust"
        onSubmit={(event) => {
          event.preventDefault();
          onSave(
            steps.map(({ mark, fromPercent }) => ({ mark: mark.trim(), fromPercent: Number(fromPercent) })),
          );
          onClose();
        }}
      >
        <p className="cap">{SCORES.cutSentence}</p>
        <div className="step-heads" aria-hidden="true">
          <span>{SCORES.mark}</span>
          <span>{SCORES.fromPercent}</span>
        </div>
        <ol className="steps">
          {steps.map(({ id, mark, fromPercent }) => (
            <li key={id}>
              <label>
                <span className="vh">{SCORES.mark}</span>
                <input
                  required
                  maxLength={20}
                  value={mark}
                  onChange={({ currentTarget }) => change(id, { mark: currentTarget.value })}
                />
              </label>
              <label className="share">
                <span className="vh">{SCORES.fromPercent}</span>
                <input
                  required
                  type="number"
                  min={0}
                  max={100}
                  value={fromPercent}
                  onChange={({ currentTarget }) => change(id, { fromPercent: currentTarget.value })}
                />
                <span aria-hidden="true">{SCORES.percent}</span>
              </label>
              <Button
                look="bare"
                label={SCORES.removeStep(mark)}
                onPress={() => setSteps((now) => now.filter((step) => step.id !== id))}
              >
                {SCORES.removeShort}
              </Button>
            </li>
          ))}
        </ol>
        <div className="rem">
          <button type="submit" className="btn ink">
            {SCORES.saveScale}
          </button>
          <Button onPress={add}>
            <Glyph name="plus" /> {SCORES.addStep}
          </Button>
        </div>
      </form>
    </SlipDialog>
  );
}
