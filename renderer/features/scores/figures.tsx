import type { Sum } from '../../../src-core/marking/sum.ts';
import { points, SCORES } from '../../text/english/scores.ts';

/** The three figures of a line: points, per cent, scale. */
export function Figures({
  sum,
  percent,
  scale,
  instead = null,
  hasScale,
}: {
  readonly sum: Sum | null;
  readonly percent: number | null;
  readonly scale: string | null;
  /** Said instead of points where there is no mark. */
  readonly instead?: string | null;
  readonly hasScale: boolean;
}) {
  return (
    <>
      <td className="r f-points">
        {sum ? (
          <>
            <b>{points(sum.points)}</b>
            <small>{SCORES.of(sum.max)}</small>
          </>
        ) : (
          (instead ?? SCORES.none)
        )}
      </td>
      <td className="r f-percent">{SCORES.percentOf(percent)}</td>
      {hasScale && (
        <td className="c f-scale">
          <span className="gr">{scale ?? SCORES.none}</span>
        </td>
      )}
    </>
  );
}
