import type { EvidenceDrawing } from './evidence-drawing.ts';

/** Width to height of the frame that every film is shown in. */
export const FRAME_ASPECT = 16 / 9;

/** The number of each performer at the foot of the picture, as the count sheet has them. */
export function LaneNumbers({
  lanes,
  aspect,
}: {
  readonly lanes: EvidenceDrawing['lanes'];
  readonly aspect: number;
}) {
  // A film narrower than the frame stands in its middle.
  const share = Math.min(1, aspect / FRAME_ASPECT);
  return lanes.map(({ x, isLate }, at) => (
    <span
      // biome-ignore lint/suspicious/noArrayIndexKey: lanes are known by their place
      key={at}
      className={`lane-no ${isLate ? 'late' : ''}`}
      aria-hidden="true"
      style={{ left: `${50 + (x - 0.5) * share * 100}%` }}
    >
      {at + 1}
    </span>
  ));
}
