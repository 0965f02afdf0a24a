import { LINE_UP } from '../../text/english/line-up.ts';
import type { LocalTimes } from '../../text/local-time.ts';
import { type ClockAxis, getPercent } from './clock-axis.ts';

/** The class clock, running down the page. */
export function ClockColumn({ axis, times }: { readonly axis: ClockAxis; readonly times: LocalTimes }) {
  return (
    <div className="clock">
      <header className="cap">
        {LINE_UP.clock.map((word) => (
          <span key={word}>{word}</span>
        ))}
      </header>
      <div className="ax lace-high">
        {axis.ticks.map((ms) => (
          <span key={ms} style={{ top: `${getPercent(axis, ms)}%` }}>
            {times.minute(ms)}
          </span>
        ))}
      </div>
    </div>
  );
}
