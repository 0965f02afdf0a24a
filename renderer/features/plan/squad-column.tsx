import type { KeyboardEvent } from 'react';
import { ListBox, ListBoxItem } from 'react-aria-components';
import type { Plan, Squad, SquadCode } from '../../../src-core/lesson/plan.ts';
import type { Pupil } from '../../../src-core/lesson/roster.ts';
import { SQUADS } from '../../text/english/plan-squads.ts';
import type { PlanEdit } from './plan-edit.ts';
import { type MovingPupil, PupilName } from './pupil-name.tsx';
import { SquadSigns } from './squad-signs.tsx';

/** One squad: what tells it apart, and its pupils, who are chosen to be moved, or sent to another squad by its number. */
export function SquadColumn({
  squad,
  at,
  plan,
  pupils,
  chosen,
  moving,
  onChoose,
  onMove,
  onChange,
}: {
  readonly squad: Squad;
  /** Its place in the plan, from 0. */
  readonly at: number;
  readonly plan: Plan;
  readonly pupils: readonly Pupil[];
  /** Ids of pupils chosen in all squads. */
  readonly chosen: readonly string[];
  readonly moving: MovingPupil;
  readonly onChoose: (ids: readonly string[]) => void;
  readonly onMove: (ids: readonly string[], squad: SquadCode) => void;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const own = new Set(pupils.map(({ id }) => id));
  const sendByNumber = (event: KeyboardEvent) => {
    const target = plan.squads[Number(event.key) - 1];
    const focused = (event.target as HTMLElement).dataset.pupil;
    if (!target || focused === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    // Before the list takes the digit for the beginning of a name.
    event.preventDefault();
    event.stopPropagation();
    onMove(chosen.includes(focused) ? chosen : [focused], target.code);
  };
  return (
    <section className="squad-column" aria-label={squad.name} onKeyDownCapture={sendByNumber}>
      <SquadSigns {...{ squad, at, plan, onChange }} isEmpty={pupils.length === 0} />
      <ListBox
        aria-label={SQUADS.pupilsOf(squad.name)}
        className="pupils"
        items={pupils}
        selectionMode="multiple"
        selectedKeys={chosen.filter((id) => own.has(id))}
        onSelectionChange={(keys) => {
          const now = keys === 'all' ? [...own] : [...keys].map(String);
          onChoose([...chosen.filter((id) => !own.has(id)), ...now]);
        }}
        renderEmptyState={() => <span className="pen">{SQUADS.nobody}</span>}
      >
        {(pupil) => (
          <ListBoxItem id={pupil.id} textValue={`${pupil.given} ${pupil.family}`} data-pupil={pupil.id}>
            <PupilName {...{ pupil, moving }} />
          </ListBoxItem>
        )}
      </ListBox>
    </section>
  );
}
