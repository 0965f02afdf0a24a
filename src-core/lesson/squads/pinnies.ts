import type { Squad } from '../plan.ts';

/** A set of pinnies as a school might own it; `pinnie-pattern.ts` has the pattern that goes with each name. */
export interface PinnieKind {
  readonly name: string;
  /** `#RRGGBB`. */
  readonly colour: string;
}

/** The eight pinnies of the desk, in the order squads get them. */
export const PINNIES: readonly PinnieKind[] = [
  { name: 'teal', colour: '#1F8A86' },
  { name: 'amber', colour: '#E9A92B' },
  { name: 'plum', colour: '#8A4A86' },
  { name: 'moss', colour: '#6F8B3A' },
  { name: 'slate', colour: '#66788A' },
  { name: 'coral', colour: '#EE8A74' },
  { name: 'navy', colour: '#2B3F73' },
  { name: 'chalk', colour: '#FFFFFF' },
];

/** What tells a squad apart, before it has a route. */
export type SquadSigns = Pick<Squad, 'code' | 'name' | 'pinnie' | 'tablet'>;

/**
 * So many squads: those there are stay as they are, further ones get pinnies and tablets that are still free. Beyond
 * the eight pinnies squads are numbered and share colours, which the plan's check then names.
 */
export function buildSquadSigns(count: number, present: readonly SquadSigns[]): readonly SquadSigns[] {
  const signs = present
    .slice(0, count)
    .map(({ code, name, pinnie, tablet }) => ({ code, name, pinnie, tablet }));
  const isFree = (kind: PinnieKind) =>
    !signs.some(({ code, pinnie }) => code === kind.name || pinnie.name.toLowerCase() === kind.name);
  while (signs.length < count) {
    const kind = PINNIES.find(isFree);
    let number = signs.length + 1;
    while (signs.some(({ code }) => code.endsWith(`-${number}`))) number += 1;
    const like = kind ?? PINNIES[(number - 1) % PINNIES.length];
    const word = kind?.name ?? `${like?.name ?? 'squad'} ${number}`;
    signs.push({
      code: word.replace(' ', '-'),
      name: word.charAt(0).toUpperCase() + word.slice(1),
      pinnie: { name: word, colour: like?.colour ?? '#FFFFFF' },
      tablet: findFreeTablet(signs),
    });
  }
  return signs;
}

function findFreeTablet(signs: readonly SquadSigns[]): string {
  const taken = new Set(signs.map(({ tablet }) => tablet.toLowerCase()));
  for (let number = signs.length + 1; ; number += 1) {
    if (!taken.has(`tablet ${number}`)) return `Tablet ${number}`;
  }
}
