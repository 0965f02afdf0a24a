import type { PupilRecord } from '../../../src-core/app/pupil-record.ts';
import type { Names } from '../names.ts';
import { count } from './amounts.ts';
import { points } from './scores.ts';

/** All that is said around a pupil's record. */
export const RECORD = {
  unknown: (id: string) => `There is no pupil “${id}” in roster.csv.`,
  readFirst:
    'Other pupils’ names and ids are taken out of every text, nicknames and slips of the pen are not: read it before you give it out.',
} as const;

/** A pupil's record as Markdown: what is held, in which words, and where it is kept. */
export function writeRecord(record: PupilRecord, names: Names): string {
  const sections = [
    writeHead(record),
    writeMark(record),
    writeList('Decisions about this pupil', record.decisions.map(describeDecision)),
    writeList(
      'Films of the squad (they show others too and are not given out with this)',
      record.films.map(({ file, startMs, note }) => {
        const when = startMs === null ? 'no time' : names.time(startMs);
        return `${file}, ${when}${note === null ? '' : `: ${note}`}`;
      }),
    ),
    writeList(
      'Marks were handed in',
      record.handedIn.map(({ at, files }) => `${at}: ${files.join(', ')}`),
    ),
    writeList('Where this is kept', record.keptIn),
  ];
  return `${sections.filter((section) => section !== '').join('\n\n')}\n`;
}

function writeHead({ lesson, pupil, wishes }: PupilRecord): string {
  const arrived = pupil.arrived === null ? '' : `, came at ${pupil.arrived}`;
  const lines = [
    `# What is held on ${pupil.given} ${pupil.family} (${pupil.id})`,
    '',
    `${lesson.title}, ${lesson.className}, ${lesson.date}; ${pupil.squad} squad; ${pupil.attendance}${arrived}.`,
    `Stills may be shown: ${pupil.stills ? 'yes' : 'no'}. Consent to filming: ${pupil.consent ?? 'not noted'}.`,
  ];
  const total = wishes.apart + wishes.together;
  if (total > 0) lines.push(`Named in ${count(total, 'wish', 'wishes')} for who is with whom in a squad.`);
  return lines.join('\n');
}

function writeMark({ mark, filmsDeletedAt }: PupilRecord): string {
  if (filmsDeletedAt !== null) {
    const day = filmsDeletedAt.slice(0, 10);
    return `## The mark\n\nThe films were deleted on ${day}, and points are not worked out without them. What was handed in stands in the files named below.`;
  }
  const earned =
    mark.points === null || mark.max === null
      ? `No points (${mark.state}).`
      : `${points(mark.points)} of ${points(mark.max)} points (${mark.state}).`;
  const { heads, rows } = mark.account;
  const table = [heads, heads.map(() => '---'), ...rows].map(writeRow);
  return ['## The mark', '', earned, '', ...table].join('\n');
}

function writeRow(cells: readonly (string | number | null)[]): string {
  return `| ${cells.map((cell) => String(cell ?? '').replaceAll('|', '\\|')).join(' | ')} |`;
}

function describeDecision({ at, what }: PupilRecord['decisions'][number]): string {
  const told = Object.entries(what).filter(([key]) => key !== 'kind' && key !== 'of' && key !== 'pupil');
  return `${at}: ${told.map(([key, value]) => `${key} ${typeof value === 'object' ? JSON.stringify(value) : value}`).join(', ')}`;
}

function writeList(title: string, items: readonly string[]): string {
  return items.length === 0 ? '' : [`## ${title}`, '', ...items.map((item) => `- ${item}`)].join('\n');
}
