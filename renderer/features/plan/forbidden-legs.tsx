import { useState } from 'react';
import type { Plan, StationCode } from '../../../src-core/lesson/plan.ts';
import { ROUTES } from '../../text/english/plan-routes.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { allowLeg, forbidLeg } from './route-edits.ts';

/** Legs that nobody may walk, such as one across a road, each to be allowed again; and one more to forbid. */
export function ForbiddenLegs({
  rotation,
  choices,
  onChange,
}: {
  readonly rotation: Plan['rotation'];
  readonly choices: readonly (readonly [StationCode, string])[];
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const [from, setFrom] = useState<StationCode | null>(null);
  const [to, setTo] = useState<StationCode | null>(null);
  const forbid = () => {
    if (from === null || to === null) return;
    onChange(forbidLeg(from, to));
    setTo(null);
  };
  return (
    <>
      <h4 className="cap" data-at="rotation.forbidden">
        {ROUTES.forbidden}
      </h4>
      <ul className="starts">
        {rotation.forbidden.map(([one, other]) => (
          <li key={`${one} ${other}`}>
            {ROUTES.leg(one, other)}
            <button type="button" className="btn bare small" onClick={() => onChange(allowLeg(one, other))}>
              <Glyph name="cross" />
              <span className="vh">{ROUTES.allow(one, other)}</span>
            </button>
          </li>
        ))}
        <li>
          {ROUTES.forbid[0]}{' '}
          <ChoiceWord
            label={ROUTES.legFrom}
            shown={from ?? ''}
            hint={ROUTES.which}
            choices={choices}
            value={from}
            onChoose={setFrom}
          />{' '}
          {ROUTES.forbid[1]}{' '}
          <ChoiceWord
            label={ROUTES.legTo}
            shown={to ?? ''}
            hint={ROUTES.which}
            choices={choices.filter(([code]) => code !== from)}
            value={to}
            onChoose={setTo}
          />
          <Button look="bare" isDisabled={from === null || to === null} onPress={forbid}>
            {ROUTES.forbidIt}
          </Button>
        </li>
      </ul>
    </>
  );
}
