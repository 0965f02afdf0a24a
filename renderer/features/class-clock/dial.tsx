import type { ReactNode } from 'react';

/** A running track walked clockwise from its start line, at the top in the middle. */
const TRACK = 'M500 24H720A256 256 0 0 1 720 536H280A256 256 0 0 1 280 24H500';

/** The lap that remains, inked; `share` is 1 at its begin and 0 at its end. The figures stand in the field. */
export function Dial({ share, children }: { readonly share: number; readonly children: ReactNode }) {
  const walked = 100 * (1 - share);
  return (
    <div className="cc-dial">
      <svg viewBox="0 0 1000 560" aria-hidden="true">
        <path d={TRACK} className="cc-track" />
        <path
          d={TRACK}
          className="cc-left"
          pathLength={100}
          strokeDasharray={`0 ${walked} ${100 - walked} 0`}
        />
        <path d={TRACK} className="cc-lane" pathLength={300} strokeDasharray="2 4" />
        <path d="M500 4V46" className="cc-line" />
      </svg>
      <div className="cc-field">{children}</div>
    </div>
  );
}
