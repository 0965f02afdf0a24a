import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import { formatClockCard } from '../../../src-core/lesson/card-text.ts';
import { buildQrPath, buildQrSymbol, QUIET_MODULES } from '../../../src-core/platform/qr-symbol.ts';
import { CLASS_CLOCK } from '../../text/english/class-clock.ts';

/** Pixels of a style sheet in a millimetre (CSS Values and Units 4, 6.2); a projector shows them larger. */
const PIXELS_PER_MM = 96 / 25.4;

/** A tablet should read the code from the middle of a class in front of the screen. */
const WANTED_METRES = 3;

/** The code of the instant, renewed each second: black on white in every theme, with its quiet zone. */
export function ClockCode({ nowMs, time }: { readonly nowMs: number; readonly time: string }) {
  const text = formatClockCard(nowMs);
  const symbol = useMemo(() => buildQrSymbol(text, 'Q'), [text]);
  const place = useRef<SVGSVGElement>(null);
  const [widthPixels, setWidth] = useState(0);
  useLayoutEffect(() => {
    const code = place.current;
    if (!code) return undefined;
    const watcher = new ResizeObserver(() => setWidth(code.getBoundingClientRect().width));
    watcher.observe(code);
    return () => watcher.disconnect();
  }, []);
  const across = symbol.size + 2 * QUIET_MODULES;
  const millimetres = (widthPixels * symbol.size) / across / PIXELS_PER_MM;
  // A code is read from ten times its width, as on paper.
  const metres = Math.min(WANTED_METRES, Math.floor(millimetres / 10) / 10);
  return (
    <div className="cc-code">
      <svg
        ref={place}
        viewBox={`${-QUIET_MODULES} ${-QUIET_MODULES} ${across} ${across}`}
        role="img"
        aria-label={CLASS_CLOCK.code(time)}
        shapeRendering="crispEdges"
      >
        <rect x={-QUIET_MODULES} y={-QUIET_MODULES} width={across} height={across} fill="#fff" />
        <path d={buildQrPath(symbol)} fill="#000" />
      </svg>
      <b>{time}</b>
      {widthPixels > 0 && (
        <p>
          {CLASS_CLOCK.film(metres)} {metres < WANTED_METRES && CLASS_CLOCK.tooSmall(WANTED_METRES)}
        </p>
      )}
    </div>
  );
}
