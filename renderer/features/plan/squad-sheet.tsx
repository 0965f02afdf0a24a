import { useState } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { SQUADS } from '../../text/english/plan-squads.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { ChosenPupils } from './chosen-pupils.tsx';
import { FormSquads } from './form-squads.tsx';
import { GroupingRules } from './grouping-rules.tsx';
import { RosterImport } from './roster-import.tsx';
import { SquadColumn } from './squad-column.tsx';
import { addSquad } from './squad-edits.ts';
import type { ClassDesk } from './use-class.ts';

/** The class in its squads: pinnie, tablet and pupils of each, the class list, and squads formed by the machine. */
export function SquadSheet({ plan, pupilDesk }: { readonly plan: Plan; readonly pupilDesk: ClassDesk }) {
  const { pupils, onChange, move, moving } = pupilDesk;
  const [isImporting, setImporting] = useState(false);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const isEmpty = pupils.length === 0;
  return (
    <Sheet label={SQUADS.head} className="squads-sheet">
      <header className="strip-head" data-at="squads">
        <h2>{SQUADS.head}</h2>
        <span className="cap">{SQUADS.sentence(pupils.length, plan.squads.length)}</span>
        <span className="push" />
        <Button look={isEmpty ? 'ink' : 'plain'} onPress={() => setImporting(true)}>
          {SQUADS.classList}
        </Button>
        <Button onPress={() => onChange(addSquad)}>
          <Glyph name="plus" /> {SQUADS.add}
        </Button>
      </header>
      {isImporting && <RosterImport pupilDesk={pupilDesk} onClose={() => setImporting(false)} />}
      {isEmpty && !isImporting && (
        <p className="says">
          <b>{SQUADS.noClass}</b> {SQUADS.noClassText}
        </p>
      )}
      {!isEmpty && <FormSquads plan={plan} pupilDesk={pupilDesk} />}
      <div className="squad-columns">
        {plan.squads.map((squad, at) => (
          <SquadColumn
            key={squad.code}
            {...{ squad, at, plan, chosen, moving, onChange }}
            pupils={pupils.filter((pupil) => pupil.squad === squad.code)}
            onChoose={setChosen}
            onMove={move}
          />
        ))}
      </div>
      <ChosenPupils {...{ plan, chosen, onChange }} onMove={move} onChoose={setChosen} />
      <GroupingRules {...{ plan, pupils, onChange }} />
      {!isEmpty && (
        <p className="pen squads-foot">
          {SQUADS.moveKeys(plan.squads.length)} {SQUADS.attendance}
        </p>
      )}
    </Sheet>
  );
}
