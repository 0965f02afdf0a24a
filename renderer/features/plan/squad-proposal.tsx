import { useEffect, useState } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { SQUADS } from '../../text/english/plan-squads.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Bib } from '../../ui/bib.tsx';
import { Button } from '../../ui/button.tsx';
import type { ClassDesk, SquadsReply } from './use-class.ts';

/** Squads as the machine would form them, in pencil until the teacher inks them; or why there are none. */
export function SquadProposal({
  plan,
  count,
  pupilDesk,
  onClose,
}: {
  readonly plan: Plan;
  /** How many squads are wanted. */
  readonly count: number;
  readonly pupilDesk: ClassDesk;
  readonly onClose: () => void;
}) {
  const { pupils, names, suggest, ink } = pupilDesk;
  const [seed, setSeed] = useState(plan.grouping.seed);
  const [found, setFound] = useState<SquadsReply | null>(null);
  useEffect(() => {
    let isWanted = true;
    void suggest({ ...plan, grouping: { ...plan.grouping, seed } }, count).then((reply) => {
      if (isWanted) setFound(reply);
    });
    return () => {
      isWanted = false;
    };
  }, [suggest, plan, seed, count]);
  if (!found) return null;
  const nameOf = new Map(pupils.map(({ id, given, family }) => [id, `${given} ${family}`]));
  return (
    <section className="proposal" aria-label={found.ok ? SQUADS.proposed : SQUADS.notPossible}>
      <p className="pen" role="status">
        <b>{found.ok ? SQUADS.proposed : SQUADS.notPossible}.</b> {found.ok && SQUADS.proposedHint}
      </p>
      {found.problems.map((problem) => {
        const { what, todo } = describeProblem(problem, names);
        return (
          <p key={what} className={found.ok ? 'pen' : 'need'}>
            <b>{what}</b> {todo}
          </p>
        );
      })}
      {found.ok && (
        <div className="squad-columns pencilled">
          {found.value.squads.map(({ code, name, pinnie, pupils: ids }, at) => (
            <section key={code} className="squad-column" aria-label={name}>
              <b>
                <Bib pinnie={{ ...pinnie, at }} /> {name}
              </b>
              <ul>
                {ids.map((id) => (
                  <li key={id}>{nameOf.get(id) ?? id}</li>
                ))}
              </ul>
            </section>
          ))}
        </div>
      )}
      <div className="rem">
        {found.ok && (
          <Button look="ink" isAutoFocused onPress={() => void ink(found.value, seed).then(onClose)}>
            {SQUADS.ink}
          </Button>
        )}
        <Button onPress={() => setSeed((now) => (now + 1) % 1_000_000)}>{SQUADS.again}</Button>
        <Button onPress={onClose}>{SQUADS.putAway}</Button>
      </div>
    </section>
  );
}
