import { useId } from 'react';
import { getBibPattern, getBibTone } from '../../src-core/lesson/pinnie-pattern.ts';

const OUTLINE = 'M3 1.5H7.2C7.6 4.6 12.4 4.6 12.8 1.5H17V6.5L18.8 10V22.5H1.2V10L3 6.5Z';

/** A pinnie in colour and pattern; null: a plain outline, for hidden names. Always followed by the squad's name. */
export function Bib({
  pinnie,
}: {
  readonly pinnie: { readonly name: string; readonly colour: string; readonly at: number } | null;
}) {
  const cut = useId();
  const pattern = pinnie && getBibPattern(pinnie.name, pinnie.at);
  const tone = pinnie ? getBibTone(pinnie.colour) : 'none';
  return (
    <span className="bib" aria-hidden="true">
      <svg viewBox="0 0 20 24" aria-hidden="true">
        <clipPath id={cut}>
          <path d={OUTLINE} />
        </clipPath>
        {pinnie && pattern && (
          <g clipPath={`url(#${cut})`}>
            <rect width="20" height="24" fill={pinnie.colour} />
            {pattern.lines && (
              <path d={pattern.lines} fill="none" stroke={tone} strokeWidth={pattern.width ?? 1.5} />
            )}
            {pattern.solids && <path d={pattern.solids} fill={tone} />}
          </g>
        )}
        <path d={OUTLINE} className="bib-edge" />
      </svg>
    </span>
  );
}
