import type { Seconds } from '../platform/units.ts';
import type { FlowGrid, FlowTarget } from './block-flow.ts';
import { createFlowGrid, readBlockFlow } from './block-flow.ts';
import type { CameraStep } from './camera-step.ts';
import { STEP } from './camera-step.ts';
import type { CameraSearch } from './find-camera-step.ts';
import { createCameraSearch, findCameraStep, PYRAMID_LEVELS } from './find-camera-step.ts';
import type { LumaLevel } from './luma-level.ts';
import { createLumaLevel, fillSlopes, halveLuma, smoothLuma } from './luma-level.ts';
import type { MotionSeries } from './motion-series.ts';

/** What the frames to come are like. */
export interface MotionReaderOptions {
  /** In pixels; the long side about 80. */
  readonly width: number;
  readonly height: number;
  /** Frames per second, about 15. */
  readonly rateHz: number;
  /** When the first of them is shown, from the clip's beginning; 0 unless given. */
  readonly fromSeconds?: Seconds;
}

/** Reads motion from small luma frames, one after another. */
export interface MotionReader {
  /** Takes the next frame: `width × height` bytes, row by row, 0 black to 255 white. The bytes are not kept. */
  push(luma: Uint8Array): void;
  /** The motion of all frames so far; the reader may not be used afterwards. */
  finish(): MotionSeries;
}

/** Frames that room is made for at a time. */
const FRAMES_AT_A_TIME = 512;

interface State {
  readonly grid: FlowGrid;
  readonly search: CameraSearch;
  readonly spare: Float32Array;
  before: LumaLevel[];
  after: LumaLevel[];
}

/** A reader for frames of one size. Between calls to `push` it keeps the last frame alone; no call allocates per frame. */
export function createMotionReader(options: MotionReaderOptions): MotionReader {
  const { width, height, rateHz, fromSeconds = 0 } = options;
  const state = createState(width, height);
  const { columns, rows, fine } = state.grid;
  let frameCount = 0;
  let planes = growPlanes(state.grid, null, 0);
  return {
    push: (luma) => {
      if (luma.length !== width * height)
        throw new Error(`frame of ${luma.length} bytes, not ${width * height}`);
      if (4 * frameCount === planes.camera.length) {
        planes = growPlanes(state.grid, planes, frameCount + Math.max(FRAMES_AT_A_TIME, frameCount >> 1));
      }
      takeFrame(state, luma);
      if (frameCount > 0) {
        planes.frame = frameCount;
        planes.camera.set(describeStep(readStep(state, planes), width), frameCount * 4);
      }
      frameCount += 1;
    },
    finish: () => {
      const { u, v, fine: near, camera } = growPlanes(state.grid, planes, frameCount);
      const size = { rateHz, fromSeconds, width, height, columns, rows, frameCount };
      return { ...size, u, v, camera, fine: { columns: fine.columns, rows: fine.rows, ...near } };
    },
  };
}

type Plane = Float32Array<ArrayBuffer>;

interface Planes extends FlowTarget {
  readonly u: Plane;
  readonly v: Plane;
  readonly fine: { readonly u: Plane; readonly v: Plane };
  readonly camera: Plane;
  frame: number;
}

/** Planes with room for so many frames, with what stood in the old ones. */
function growPlanes({ columns, rows, fine }: FlowGrid, from: Planes | null, frames: number): Planes {
  const cells = frames * columns * rows;
  const fineCells = frames * fine.columns * fine.rows;
  return {
    u: grow(from?.u, cells),
    v: grow(from?.v, cells),
    fine: { u: grow(from?.fine.u, fineCells), v: grow(from?.fine.v, fineCells) },
    camera: grow(from?.camera, frames * 4),
    frame: 0,
  };
}

function createState(width: number, height: number): State {
  const createLevels = () =>
    Array.from({ length: PYRAMID_LEVELS }, (_, level) =>
      createLumaLevel(Math.max(4, width >> level), Math.max(4, height >> level)),
    );
  return {
    grid: createFlowGrid(width, height),
    search: createCameraSearch(width * height),
    spare: new Float32Array(width * height),
    before: createLevels(),
    after: createLevels(),
  };
}

function grow(from: Plane | undefined, length: number): Plane {
  const to = new Float32Array(length);
  if (from) to.set(from.subarray(0, length));
  return to;
}

/** Makes `after` the pyramid of the new frame and `before` that of the last one. */
function takeFrame(state: State, luma: Uint8Array): void {
  const { before, after, spare } = state;
  state.before = after;
  state.after = before;
  const [fine] = before;
  if (!fine) return;
  fine.luma.set(luma);
  smoothLuma(fine.luma, fine.width, spare);
  for (const [index, level] of before.entries()) {
    const finer = before[index - 1];
    if (finer) {
      halveLuma(finer, level);
      smoothLuma(level.luma, level.width, spare);
    }
    fillSlopes(level);
  }
}

/** Writes the flow between the last two frames, and gives the camera's step. */
function readStep({ before, after, search, grid }: State, to: FlowTarget): CameraStep {
  const { step, warped } = findCameraStep(before, after, search);
  if (before[0]) readBlockFlow(grid, before[0], warped, to);
  return step;
}

const described = new Float32Array(4);

function describeStep(step: CameraStep, width: number): Float32Array {
  described[0] = ((step[STEP.moveX] as number) * width) / 2;
  described[1] = ((step[STEP.moveY] as number) * width) / 2;
  described[2] = Math.log1p(step[STEP.zoom] as number);
  described[3] = step[STEP.turn] as number;
  return described;
}
