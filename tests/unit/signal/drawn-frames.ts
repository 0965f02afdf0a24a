import { createNoiseField } from '../../../fixtures/film/value-noise.ts';

/** Where the background of a drawn frame lies, as a camera step would have it: pixels, log of zoom, radians. */
export interface DrawnView {
  readonly moveX?: number;
  readonly moveY?: number;
  readonly zoom?: number;
  readonly turn?: number;
  readonly gain?: number;
}

/** A disc that stands before the background: middle and radius in pixels, brightness. */
export interface DrawnDisc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

const WIDTH = 80;
const HEIGHT = 45;
const field = createNoiseField(7);

/** One small frame, 80×45: a smooth random background as the moved camera sees it, and discs with a grain of their own. */
export function drawFrame(view: DrawnView = {}, discs: readonly DrawnDisc[] = []): Uint8Array {
  const { moveX = 0, moveY = 0, zoom = 0, turn = 0, gain = 1 } = view;
  const scale = Math.exp(zoom);
  return Uint8Array.from({ length: WIDTH * HEIGHT }, (_, at) => {
    const x = (at % WIDTH) - (WIDTH - 1) / 2;
    const y = Math.floor(at / WIDTH) - (HEIGHT - 1) / 2;
    const disc = discs.find(
      (one) => Math.hypot((at % WIDTH) - one.x, Math.floor(at / WIDTH) - one.y) < one.radius,
    );
    if (disc)
      return 170 + 50 * field(((at % WIDTH) - disc.x) / 3 + 90, (Math.floor(at / WIDTH) - disc.y) / 3);
    // The place on the first frame that this one shows here: the step undone.
    const px = x - moveX;
    const py = y - moveY;
    const bx = (px * Math.cos(turn) + py * Math.sin(turn)) / scale;
    const by = (py * Math.cos(turn) - px * Math.sin(turn)) / scale;
    return Math.round(gain * (90 + 60 * field(bx / 6 + 30, by / 6 + 30)));
  });
}
