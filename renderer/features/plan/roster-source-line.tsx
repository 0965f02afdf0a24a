import type { RosterSource } from '../../../src-core/contract/planning-calls.ts';
import { ROSTER } from '../../text/english/plan-squads.ts';
import { ChoiceWord } from './choice-word.tsx';
import type { RosterImportState } from './use-roster-import.ts';

const COLUMNS = ['id', 'given', 'family'] as const;

/** What the list turned out to be: the columns of a CSV to be put right, or the class of an export to be chosen. */
export function RosterSourceLine({
  source,
  list,
}: {
  readonly source: RosterSource;
  readonly list: RosterImportState;
}) {
  if (source.kind === 'oneroster') {
    const chosen = source.classes.find(({ id }) => id === source.classId);
    return (
      <p className="says">
        {ROSTER.oneRoster(source.version)}. {ROSTER.classIs}:{' '}
        <ChoiceWord
          label={ROSTER.classIs}
          shown={chosen ? ROSTER.classOf(chosen.title, chosen.pupils) : ''}
          hint={ROSTER.whichClass}
          choices={source.classes.map(
            ({ id, title, pupils }) => [id, ROSTER.classOf(title, pupils)] as const,
          )}
          value={source.classId}
          onChoose={(classId) => list.choose({ classId })}
        />
      </p>
    );
  }
  const { columns, heads } = source;
  return (
    <p className="says roster-columns">
      <span>{ROSTER.csv}.</span>
      {COLUMNS.map((column) => (
        <span key={column}>
          {ROSTER.column[column]}:{' '}
          <ChoiceWord
            label={ROSTER.column[column]}
            shown={columns[column] ?? ''}
            hint={ROSTER.noColumn}
            choices={heads.map((head) => [head, head] as const)}
            value={columns[column]}
            onChoose={(head) => list.choose({ columns: { ...columns, [column]: head } })}
          />
        </span>
      ))}
    </p>
  );
}
