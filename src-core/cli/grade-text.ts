import { count, span } from '../../renderer/text/english/amounts.ts';
import { nameAside, nameOrderRule, nameStationSource } from '../../renderer/text/english/circuit.ts';
import { nameClock } from '../../renderer/text/english/clock.ts';
import { describeFlag, nameOneFlag } from '../../renderer/text/english/flags.ts';
import { namePeriod } from '../../renderer/text/english/period.ts';
import type { Names } from '../../renderer/text/names.ts';
import { findClipPoints } from '../app/grade-lesson.ts';
import type { GradedClip, GradedLesson, GradedSquad, RaisedFlag } from '../app/graded-lesson.ts';
import { ORDER_RULES } from '../marking/order-rule.ts';
import { toOneLine } from './one-line.ts';
import { formatTable } from './table.ts';

/** A graded lesson as a teacher reads it in a terminal. */
export function formatGrade(graded: GradedLesson, names: Names): string {
  const { lesson } = graded.lesson.plan;
  const open = graded.flags.filter(isOpen);
  return [
    `${lesson.title}, ${lesson.className}, ${lesson.date}, ${namePeriod(lesson.period)}\n`,
    ...graded.squads.map((squad) => formatSquad(graded, squad, names)),
    formatAside(graded, names),
    formatFlags(open, names),
    formatSquadPoints(graded),
  ]
    .filter((part) => part !== '')
    .join('\n');
}

/** True where the teacher still has to answer. */
export function isOpen({ asks, answer }: RaisedFlag): boolean {
  return asks && answer === null;
}

function formatSquad(
  graded: GradedLesson,
  { squad, clock, clips, match }: GradedSquad,
  names: Names,
): string {
  const rows = clips.map((clip) => formatClip(graded, clip, names));
  const missing = match.missing.map((slot) => [
    String(slot + 1),
    '',
    squad.route[slot] ?? '',
    '',
    '–',
    '',
    'no clip',
  ]);
  const head = `${squad.name}: ${count(clips.length, 'clip')} for ${count(squad.route.length, 'slot')}, route ${squad.route.join(' ')}, ${formatClock(clock)}\n`;
  return head + formatTable([...rows, ...missing], '  ');
}

function formatClock({ from, offsetSeconds, uncertaintySeconds }: GradedSquad['clock']): string {
  if (from === 'nothing') return `clock not checked (±${span(uncertaintySeconds)})`;
  return nameClock(offsetSeconds);
}

function formatClip(graded: GradedLesson, clip: GradedClip, names: Names): string[] {
  const { assignment, time } = clip;
  const points = findClipPoints(graded.score, clip.reading.id);
  return [
    assignment.slot === null ? '–' : String(assignment.slot + 1),
    time.startMs === null ? 'no time' : names.time(time.startMs),
    assignment.station ?? '?',
    nameStationSource(assignment.stationFrom),
    points === null ? '–' : String(points),
    clip.path,
    clip.flags.map((flag) => `${nameOneFlag(flag.flag)}${isOpen(flag) ? '' : ' (settled)'}`).join(', '),
  ];
}

function formatAside({ aside }: GradedLesson, names: Names): string {
  if (aside.length === 0) return '';
  const rows = aside.map(({ reading, reason, time, squad }) => [
    reading.copies.map(({ file }) => file.path).join(', '),
    squad === null ? '' : names.squad(squad),
    time?.startMs == null ? '' : names.time(time.startMs),
    nameAside(reason),
  ]);
  return `Set aside\n${formatTable(rows, '  ')}`;
}

function formatFlags(open: readonly RaisedFlag[], names: Names): string {
  if (open.length === 0) return 'No flag is open.\n';
  const rows = open.map(({ flag, key }) => {
    const { what, todo } = describeFlag(flag, names);
    const subject = flag.clip === null ? names.squad(flag.squad) : names.clip(flag.clip);
    const advice = [what, todo ?? ''].join(' ');
    return `  ${nameOneFlag(flag)}: ${toOneLine(subject)}\n    ${toOneLine(advice)}\n    ${key}\n`;
  });
  return `${count(open.length, 'open flag')}\n${rows.join('')}`;
}

/** Each squad's points under every order rule, side by side. */
export function formatSquadPoints({ score, lesson }: GradedLesson): string {
  const heads = ORDER_RULES.map(
    (rule) => `${nameOrderRule(rule)}${rule === lesson.plan.orderRule ? ' *' : ''}`,
  );
  const rows = score.squads.map(({ squad, byRule, sum }) => [
    lesson.plan.squads.find(({ code }) => code === squad)?.name ?? squad,
    ...ORDER_RULES.map((rule) => `${byRule[rule].points} / ${sum.max}`),
  ]);
  return `Points by order rule (* the plan’s; unconfirmed answers count as they stand)\n${formatTable([['', ...heads], ...rows], '  ')}`;
}
