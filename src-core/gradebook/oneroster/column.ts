/** What a field may hold (1EdTech OneRoster v1.2 CSV Binding, section 3, "Data Types"). */
export type ValueKind =
  | 'guid'
  | 'guids'
  | 'text'
  | 'texts'
  | 'boolean'
  | 'date'
  | 'date-time'
  | 'year'
  | 'integer'
  | 'float'
  | 'one-of'
  | 'status'
  | 'score-scale';

/** One column of a table. */
export interface Column {
  readonly name: string;
  readonly kind: ValueKind;
  readonly isRequired: boolean;
  /** For `one-of`: the words allowed, beside those that begin with `ext:`. */
  readonly words: readonly string[];
  /** For ids of rows elsewhere: the table they stand in; null for others. */
  readonly table: string | null;
}

/**
 * A column from its short form: `title text!` is a required text, `type one-of!:term|semester` one of these words,
 * `orgSourcedId guid!:orgs` the id of a row of orgs.csv. Throws where the form is wrong: these are our own tables.
 */
export function parseColumn(form: string): Column {
  const match = /^(\S+) ([a-z-]+)(!?)(?::(.+))?$/.exec(form);
  if (!match) throw new Error(`no column: ${form}`);
  const [, name = '', kind = '', required, detail = ''] = match;
  return {
    name,
    kind: kind as ValueKind,
    isRequired: required === '!',
    words: kind === 'one-of' ? detail.split('|') : [],
    table: kind.startsWith('guid') && detail !== '' ? detail : null,
  };
}
