import { PLANNING } from '../../../renderer/text/english/planning.ts';
import { draftRoster, type RosterDraft } from '../../app/import-roster.ts';
import { readClassListFiles } from '../../host/class-list-files.ts';
import { saveRosterText } from '../../host/plan-versions.ts';
import type { ColumnChoice } from '../../lesson/roster/class-list.ts';
import { openFolder } from '../open-folder.ts';
import { type PlanOptions, refuse, report } from '../planning-end.ts';
import { formatTable } from '../table.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `roster` as typed. */
export interface RosterOptions extends PlanOptions {
  /** `id=Student ID,given=First,family=Last`, instead of what the heads suggest. */
  readonly columns?: string;
  /** A OneRoster class's id. */
  readonly class?: string;
  /** Take out who left, instead of keeping them with a mark. */
  readonly dropLeft?: boolean;
}

/** `roster <lesson> <file>`: what a class list would change in roster.csv, and with `--save` does. */
export async function runRoster(
  [folder, file]: readonly [string, string],
  options: RosterOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const talk = { terminal, options, open };
  const columns = readColumnChoice(options.columns);
  if (columns === undefined) {
    terminal.say('! The columns make no sense. Write --columns "id=Student ID,given=First,family=Last".\n');
    return 2;
  }
  const list = await readClassListFiles(file);
  if (!list.ok) return refuse(talk, list.problems);
  const roster = await open.ports.readText('roster.csv');
  if (!roster.ok) return refuse(talk, roster.problems);
  const draft = draftRoster(list.value, {
    plan: open.lesson.plan,
    roster: roster.value,
    columns,
    classId: options.class ?? null,
    left: options.dropLeft ? 'remove' : 'keep',
  });
  if (draft.text === null) {
    if (!options.json) terminal.write(describeClasses(draft));
    return refuse(talk, draft.problems);
  }
  const saved = options.save ? await saveRosterText(folder, draft.text) : null;
  if (saved && !saved.ok) return refuse(talk, saved.problems);
  const isSaved = saved !== null;
  return report(talk, {
    json: { source: draft.source, merge: draft.merge, isSaved },
    text: `${describeMerge(draft)}${PLANNING.rosterKept(isSaved)}\n`,
    problems: draft.problems,
  });
}

function describeClasses({ source }: RosterDraft): string {
  if (source?.kind !== 'oneroster') return '';
  return formatTable(source.classes.map(({ id, pupils, title }) => [id, String(pupils), title]));
}

function describeMerge({ merge }: RosterDraft): string {
  if (!merge) return '';
  const rows = [
    ...merge.added.map(({ id, given, family, squad }) => ['new', id, `${given} ${family}, ${squad}`]),
    ...merge.changed.map(({ was, now }) => [
      'renamed',
      now.id,
      `${now.given} ${now.family}, was ${was.given} ${was.family}`,
    ]),
    ...merge.left.map(({ id, given, family }) => ['left', id, `${given} ${family}`]),
    ...merge.back.map(({ id, given, family }) => ['back', id, `${given} ${family}`]),
  ];
  return `${formatTable(rows)}${PLANNING.mergeSum(merge)}\n`;
}

/** Null: nothing was said. Undefined: it makes no sense. */
function readColumnChoice(text: string | undefined): ColumnChoice | null | undefined {
  if (text === undefined) return null;
  const chosen: Record<keyof ColumnChoice, string | null> = { id: null, given: null, family: null };
  for (const part of text.split(',')) {
    const [column = '', head = ''] = part.split('=').map((piece) => piece.trim());
    if (!(column === 'id' || column === 'given' || column === 'family') || head === '') return undefined;
    chosen[column] = head;
  }
  return chosen;
}
