import type { Sum } from '../../../src-core/marking/sum.ts';
import { points, SCORES } from '../../text/english/scores.ts';

/** The three figures of a line: points, per cent, scale; in pencil until all behind them is inked. */
export function Figures({
  sum,
  percent,
  scale,
  instead = null,
  hasScale,
  isInked,
}: {
  readonly sum: Sum | null;
  readonly percent: number | null;
  readonly scale: string | null;
  /** Said instead of points where there is no mark. */
  readonly instead?: string | null;
  readonly hasScale: boolean;
  readonly isInked: boolean;
}) {
  // Where there is no mark, nothing is proposed.
  const state = sum && !isInked ? 'pencilled' : '';
  return (
    <>
      <td className={`r f-points ${state}`}>
        {sum ? (
          <>
            <b>{points(sum.points)}</b>
            <small>{SCORES.of(sum.max)}</small>
          </>
        ) : (
          (instead ?? SCORES.none)
        )}
      </td>
      <td className={`r f-percent ${state}`}>{SCORES.percentOf(percent)}</td>
      {hasScale && (
        <td className={`c f-scale ${state}`}>
          <span className="gr">{scale ?? SCORES.none}</span>
        </td>
      )}
    </>
  );
}
