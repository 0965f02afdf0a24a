import { createContext, type ReactNode, useContext, useMemo } from 'react';
import type { Plan, SquadCode } from '../../src-core/lesson/plan.ts';
import { nameHiddenSquad } from '../text/english/window.ts';
import { Bib } from './bib.tsx';

interface Squads {
  readonly plan: Pick<Plan, 'squads'>;
  /** Squads go without name and colour, so that marks are given blind. */
  readonly isHidden: boolean;
}

const SquadsContext = createContext<Squads>({ plan: { squads: [] }, isHidden: false });

/** Tells every {@link SquadMark} below it what the squads of the open lesson are called and wear. */
export function SquadsProvider({
  plan,
  isHidden,
  children,
}: {
  readonly plan: Plan;
  readonly isHidden: boolean;
  readonly children: ReactNode;
}) {
  const squads = useMemo(() => ({ plan, isHidden }), [plan, isHidden]);
  return <SquadsContext value={squads}>{children}</SquadsContext>;
}

/** A squad's bib and name. An unknown code is shown as it is. */
export function SquadMark({ squad }: { readonly squad: SquadCode }) {
  const { plan, isHidden } = useContext(SquadsContext);
  const at = plan.squads.findIndex(({ code }) => code === squad);
  const found = plan.squads[at];
  return (
    <span className="squad">
      <Bib pinnie={found && !isHidden ? { ...found.pinnie, at } : null} />
      {isHidden ? nameHiddenSquad(at) : (found?.name ?? squad)}
    </span>
  );
}
