import type { Plan } from '../lesson/plan.ts';
import { getPaperSquad, type PaperSquad } from './paper-pinnie.ts';
import { getHeading, type Said } from './said.ts';
import type { Slip } from './slip.ts';

/** One slip as it is printed. */
export interface PaperSlip {
  readonly squad: PaperSquad;
  /** Null on a squad's. The first name alone, unless another of the squad has the same. */
  readonly pupil: Said | null;
  readonly slip: Slip;
}

/** Slips of a lesson for paper: a page each for squads, several a page to be cut apart for pupils. */
export interface SlipPages {
  readonly kind: 'squad-slips' | 'pupil-slips';
  readonly heading: Said;
  readonly slips: readonly PaperSlip[];
}

/** Slips in the plan's order of squads, so that a squad's lie together when they are cut; pupils in the roster's. */
export function buildSlipPages(
  plan: Plan,
  slips: readonly Slip[],
  { kind, isGrey }: { readonly kind: SlipPages['kind']; readonly isGrey: boolean },
): SlipPages {
  return {
    kind,
    heading: getHeading(plan),
    slips: plan.squads.flatMap(({ code }) => {
      const own = slips.filter(({ squad }) => squad === code);
      const squad = getPaperSquad(plan, code, isGrey);
      return own.map((slip) => ({ squad, pupil: getCalled(slip, own), slip }));
    }),
  };
}

function getCalled({ pupil }: Slip, own: readonly Slip[]): Said | null {
  if (!pupil) return null;
  const isShared = own.some((other) => other.pupil?.given === pupil.given && other.pupil.id !== pupil.id);
  return { text: isShared ? `${pupil.given} ${pupil.family}` : pupil.given, field: `roster ${pupil.id}` };
}
