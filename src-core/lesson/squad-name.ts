import type { Squad } from './plan.ts';

/** Words that folders and rosters add to a squad's name and that say nothing. */
const FILLERS = new Set(['squad', 'squads', 'team', 'group', 'clips', 'videos', 'pinnie', 'pinnies', 'the']);

/** A name as compared: accents, case, punctuation and filler words away, `Tablet 03` and `tablet-3` alike. */
function simplify(name: string): string {
  const words = name
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/(\p{L})(\p{N})/gu, '$1 $2')
    .split(/[^\p{L}\p{N}]+/u)
    .map((word) => word.replace(/^0+(?=\d)/, ''))
    .filter((word) => word !== '');
  const telling = words.filter((word) => !FILLERS.has(word));
  return (telling.length > 0 ? telling : words).join(' ');
}

/** All names a squad goes by, simplified: code, name, pinnie, tablet label. */
function getNames(squad: Squad): readonly string[] {
  return [squad.code, squad.name, squad.pinnie.name, squad.tablet].map(simplify);
}

/**
 * The one squad that a written name means, or null where none or several fit. The name may be the squad's code,
 * name, pinnie colour or tablet label, in any case and with filler words; failing that, exactly one squad's name
 * must stand in it as whole words (`2025-05-15 Teal`).
 */
export function findSquadByName(name: string, squads: readonly Squad[]): Squad | null {
  const wanted = simplify(name);
  if (wanted === '') return null;
  const equal = squads.filter((squad) => getNames(squad).includes(wanted));
  if (equal.length > 0) return equal.length === 1 ? (equal[0] ?? null) : null;
  const inside = squads.filter((squad) => getNames(squad).some((own) => ` ${wanted} `.includes(` ${own} `)));
  return inside.length === 1 ? (inside[0] ?? null) : null;
}

/**
 * The squad that a line of roster.csv names, or null where none or several fit. Routemark writes codes there, so a
 * squad's own code means that squad though another squad's pinnie has the same name.
 */
export function findRosterSquad(written: string, squads: readonly Squad[]): Squad | null {
  return squads.find(({ code }) => code === written.trim()) ?? findSquadByName(written, squads);
}
