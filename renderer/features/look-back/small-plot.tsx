import type { Series } from '../../../src-core/marking/look-back/build-series.ts';
import { describeSeries, type Figure, sayFigure } from '../../text/english/look-back.ts';
import { buildPlotLines, PLOT } from './plot-lines.ts';

/** A series as a small plot with its numbers beside it: at first, lately. Solid: confirmed; hollow and dashed: not all. */
export function SmallPlot({
  label,
  series,
  figure,
  top = 1,
  breaks = [],
}: {
  /** What and whose, for those who do not see the plot. */
  readonly label: string;
  readonly series: Series;
  readonly figure: Figure;
  readonly top?: number;
  readonly breaks?: readonly boolean[];
}) {
  const { width, height, pad } = PLOT;
  const { lines, dots, means } = buildPlotLines(series, Math.max(1e-9, top), breaks);
  const last = dots.at(-1);
  return (
    <div className="small-plot">
      <b>{series.early === null ? '' : sayFigure(series.early, figure)}</b>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={describeSeries(label, series, figure)}>
        <path className="plot-ground" d={`M0 ${pad}H${width}M0 ${height - pad}H${width}`} />
        {means.map(({ from, to, y }) => (
          <path key={from} className="plot-mean" d={`M${from} ${y}H${to}`} />
        ))}
        {lines.map(({ points, isInk }) => (
          <polyline key={points} className={isInk ? 'plot-ink' : 'plot-pencil'} points={points} />
        ))}
        {dots.map((dot) => (
          <circle
            key={dot.x}
            className={dot.isInk ? 'plot-ink' : 'plot-pencil'}
            cx={dot.x}
            cy={dot.y}
            r={dot === last ? 3 : 1.8}
          />
        ))}
      </svg>
      <b>{sayFigure(series.late ?? series.last, figure)}</b>
    </div>
  );
}
