import type { Plan, Squad } from '../../../src-core/lesson/plan.ts';
import { PINNIES } from '../../../src-core/lesson/squads/pinnies.ts';
import { SQUADS } from '../../text/english/plan-squads.ts';
import { Bib } from '../../ui/bib.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { ChoiceWord } from './choice-word.tsx';
import { OwnPinnie } from './own-pinnie.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { changeSquad, removeSquad } from './squad-edits.ts';
import { TypedWord } from './typed-word.tsx';

/** Stands for a pinnie that is none of the desk's. */
const OWN = '';

/** What tells a squad apart: its name, pinnie and tablet, each to be changed in place. */
export function SquadSigns({
  squad: { code, name, pinnie, tablet },
  at,
  plan,
  isEmpty,
  onChange,
}: {
  readonly squad: Squad;
  readonly at: number;
  readonly plan: Plan;
  /** Nobody is in it, so that it may be taken out. */
  readonly isEmpty: boolean;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const path = (field: string) => `squads[${at}].${field}`;
  const choices = [...PINNIES.map(({ name }) => [name, name] as const), [OWN, SQUADS.ownPinnie] as const];
  const isOwn = !PINNIES.some((kind) => kind.name === pinnie.name);
  const takePinnie = (chosen: string) => {
    const kind = PINNIES.find((one) => one.name === chosen);
    if (!kind && isOwn) return;
    onChange(changeSquad(code, { pinnie: kind ? { ...kind } : { ...pinnie, name: SQUADS.newPinnie } }));
  };
  return (
    <header>
      <div>
        <Bib pinnie={{ ...pinnie, at }} />
        <TypedWord
          label={SQUADS.nameOf(name)}
          shown={name}
          at={path('name')}
          type="text"
          value={name}
          onDecide={(value) => onChange(changeSquad(code, { name: value }))}
        />
        <span className="push" />
        {plan.squads.length > 1 && (
          <button
            type="button"
            className="btn bare small"
            disabled={!isEmpty}
            title={isEmpty ? undefined : SQUADS.removeFull}
            onClick={() => onChange(removeSquad(code))}
          >
            <Glyph name="cross" />
            <span className="vh">{SQUADS.remove(name)}</span>
          </button>
        )}
      </div>
      <div className="signs">
        <ChoiceWord
          label={SQUADS.pinnieOf(name)}
          shown={isOwn ? SQUADS.isOwnPinnie : pinnie.name}
          at={path('pinnie')}
          choices={choices}
          value={isOwn ? OWN : pinnie.name}
          onChoose={takePinnie}
        />
        {isOwn && (
          <OwnPinnie
            {...{ name, pinnie, at }}
            onDecide={(own) => onChange(changeSquad(code, { pinnie: own }))}
          />
        )}
        <TypedWord
          label={SQUADS.tabletOf(name)}
          shown={tablet}
          at={path('tablet')}
          type="text"
          value={tablet}
          onDecide={(value) => onChange(changeSquad(code, { tablet: value }))}
        />
      </div>
    </header>
  );
}
