import { nameFlag } from '../../renderer/text/english/flags.ts';
import {
  getDays,
  LOOK_BACK,
  type Measure,
  sayEnd,
  sayFigure,
} from '../../renderer/text/english/look-back.ts';
import type { Series } from '../marking/look-back/build-series.ts';
import type { LookBack, Strand } from '../marking/look-back/look-back.ts';
import { formatTable } from './table.ts';

const BARS = [...'▁▂▃▄▅▆▇█'];

/** The most lessons that a row of bars shows: a screen's worth. */
const MOST_BARS = 36;

const MEASURES: readonly Measure[] = ['points', 'repsShort', 'unison', 'flags'];

/** One section's lessons as a table: for each figure its first and last lessons, the newest one, and small bars. */
export function formatLookBack(lookBack: LookBack): string {
  const { section, criteria, squadCriteria, flagKinds, whole, squads } = lookBack;
  const [from, to] = getDays(lookBack);
  const title = LOOK_BACK.section(section.school, section.className);
  const strands = [{ name: LOOK_BACK.wholeClass, strand: whole }, ...squads.map(nameSquad)];
  const rows = [
    ...MEASURES.flatMap((measure) =>
      listRows(strands, LOOK_BACK.measures[measure], measure, (strand) => strand[measure]),
    ),
    ...criteria.flatMap(({ label }, at) => listRows(strands, label, 'criterion', (one) => one.criteria[at])),
    ...squadCriteria.flatMap(({ label }, at) =>
      listRows(strands, label, 'criterion', (one) => one.squadCriteria[at]),
    ),
    ...flagKinds.map(({ code, flags }) => buildRow(nameFlag(code), flags, 'flags')),
  ];
  const ends = Math.min(5, Math.floor(section.lessons.length / 2));
  const heads = ['', sayEnd('first', ends), sayEnd('last', ends), 'newest', ''];
  return `${title}: ${LOOK_BACK.lessons(section.lessons.length)}, ${from} to ${to}\n${formatTable([heads, ...rows], '  ')}`;
}

interface NamedStrand {
  readonly name: string;
  readonly strand: Strand;
}

function nameSquad(squad: LookBack['squads'][number]): NamedStrand {
  return { name: `  ${squad.name}`, strand: squad };
}

/** The class under the figure's own name, its squads below it; nothing where no lesson has the figure. */
function listRows(
  strands: readonly NamedStrand[],
  label: string,
  measure: Measure | 'criterion',
  get: (strand: Strand) => Series | undefined,
): readonly (readonly string[])[] {
  return strands.flatMap(({ name, strand }, at) => {
    const series = get(strand);
    return series && series.last !== null ? [buildRow(at === 0 ? label : name, series, measure)] : [];
  });
}

function buildRow(label: string, series: Series, measure: Measure | 'criterion'): readonly string[] {
  const figures = [series.early, series.late, series.last].map((value) => sayFigure(value, measure));
  return [label, ...figures, drawBars(series)];
}

/** The newest lessons as bars from nothing to all; amounts from nothing to the most there were. */
function drawBars({ points }: Series): string {
  const values = points.slice(-MOST_BARS).map(({ value }) => value);
  const top = Math.max(1, ...values.map((value) => value ?? 0));
  return values
    .map((value) => (value === null ? ' ' : BARS[Math.round((value / top) * (BARS.length - 1))]))
    .join('');
}
