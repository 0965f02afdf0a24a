import { type BibPattern, getBibPattern, getBibTone } from '../lesson/pinnie-pattern.ts';
import type { Plan, SquadCode } from '../lesson/plan.ts';
import type { Said } from './said.ts';

/** How a squad is told from the others on paper: never by colour alone, so the pattern and both names come along. */
export interface PaperSquad {
  readonly name: Said;
  readonly pinnie: Said;
  readonly tablet: Said;
  readonly colour: string;
  /** What the pattern is drawn in, on {@link PaperSquad.colour}. */
  readonly tone: string;
  readonly pattern: BibPattern;
}

/** A squad of the plan as paper shows it. In grey, colour and tone are greys of the same lightness. */
export function getPaperSquad(plan: Plan, code: SquadCode, isGrey: boolean): PaperSquad {
  const at = plan.squads.findIndex((squad) => squad.code === code);
  const squad = plan.squads[at];
  if (!squad) throw new Error(`no squad ${code}`);
  const colour = isGrey ? getGrey(squad.pinnie.colour) : squad.pinnie.colour;
  return {
    name: { text: squad.name, field: `squads[${at}].name` },
    pinnie: { text: squad.pinnie.name, field: `squads[${at}].pinnie.name` },
    tablet: { text: squad.tablet, field: `squads[${at}].tablet` },
    colour,
    tone: getBibTone(colour),
    pattern: getBibPattern(squad.pinnie.name, at),
  };
}

/** The grey of a colour's luma (Rec. ITU-R BT.601, 2.5.1). */
function getGrey(colour: string): string {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((from) =>
    Number.parseInt(colour.slice(from, from + 2), 16),
  );
  const level = Math.round(0.299 * red + 0.587 * green + 0.114 * blue);
  return `#${level.toString(16).padStart(2, '0').repeat(3)}`;
}
