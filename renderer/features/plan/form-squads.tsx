import { useState } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { SQUADS } from '../../text/english/plan-squads.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceWord } from './choice-word.tsx';
import { RANGES } from './plan-edits.ts';
import { changeGrouping } from './squad-edits.ts';
import { SquadProposal } from './squad-proposal.tsx';
import { TypedWord } from './typed-word.tsx';
import type { ClassDesk } from './use-class.ts';

/** The most squads that are offered: as many as there are pinnies. */
const MOST_SQUADS = 8;

/** Squads formed by the machine: how many and by which number, as a sentence; then the proposal in pencil. */
export function FormSquads({ plan, pupilDesk }: { readonly plan: Plan; readonly pupilDesk: ClassDesk }) {
  const { pupils, onChange } = pupilDesk;
  const [wanted, setWanted] = useState<number | null>(null);
  const [isProposed, setProposed] = useState(false);
  const count = wanted ?? plan.squads.length;
  const { seed } = plan.grouping;
  const choices = Array.from({ length: Math.min(MOST_SQUADS, pupils.length) }, (_, at) => {
    return [String(at + 1), SQUADS.sizes(at + 1, pupils.length)] as const;
  });
  return (
    <>
      <p className="says form-squads">
        <span>
          {SQUADS.form[0]}{' '}
          <ChoiceWord
            label={SQUADS.formLabel}
            shown={SQUADS.sizes(count, pupils.length)}
            choices={choices}
            value={String(count)}
            onChoose={(chosen) => setWanted(Number(chosen))}
          />
          {SQUADS.form[1]}{' '}
          <TypedWord
            label={SQUADS.seedLabel}
            shown={String(seed)}
            at="grouping.seed"
            type="number"
            range={RANGES.seed}
            value={String(seed)}
            onDecide={(typed) => onChange(changeGrouping({ seed: Number(typed) }))}
          />
          {SQUADS.form[2]}
        </span>
        <Button onPress={() => setProposed(true)}>{SQUADS.formNow}</Button>
      </p>
      {isProposed && <SquadProposal {...{ plan, count, pupilDesk }} onClose={() => setProposed(false)} />}
    </>
  );
}
