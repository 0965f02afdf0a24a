import type { HandInKind } from '../../ui/preferences.ts';

/** How the file of a kind must end to be known for what it is; null: any name will do. */
const ENDINGS: Readonly<Record<HandInKind, string | null>> = { csv: null, xlsx: '.xlsx', oneroster: '.zip' };

const KNOWN = /\.(csv|xlsx|zip)$/i;

/** A typed name with the ending that the kind asks for, in the place of another kind's. */
export function getFullName(typed: string, kind: HandInKind): string {
  const ending = ENDINGS[kind];
  const name = typed.trim();
  if (ending === null || name === '' || name.endsWith(ending)) return name;
  return `${name.replace(KNOWN, '')}${ending}`;
}
