import { ELEMENT } from '../media/ebml/element-ids.ts';
import { readElementId, readElementSize } from '../media/ebml/element-size.ts';
import type { Seconds } from '../platform/units.ts';
import { MS_PER_SECOND } from '../platform/units.ts';

/** One picture out of a run of ffmpeg that writes several streams at once. */
export interface StreamPacket {
  /** Which of the run's maps it belongs to, from 0. */
  readonly stream: number;
  /** Size of the stream's pictures, in pixels. */
  readonly width: number;
  readonly height: number;
  /** Presentation time from the start of the clip, to the millisecond. */
  readonly atSeconds: Seconds;
  /** As the stream's encoder made it: raw pixels, or a JPEG file. */
  readonly bytes: Uint8Array;
}

/** Elements that this stream's reader needs beyond those of a clip's header — RFC 9559 §5.1. */
const OWN = {
  trackNumber: 0xd7,
  video: 0xe0,
  pixelWidth: 0xb0,
  pixelHeight: 0xba,
  timestamp: 0xe7,
  blockGroup: 0xa0,
  block: 0xa1,
  simpleBlock: 0xa3,
} as const;

/** Elements that are entered; what lies in them comes as if it stood outside. */
const ENTERED: ReadonlySet<number> = new Set([
  ELEMENT.segment,
  ELEMENT.tracks,
  ELEMENT.trackEntry,
  OWN.video,
  ELEMENT.cluster,
  OWN.blockGroup,
]);

const TAKEN: ReadonlySet<number> = new Set([
  OWN.trackNumber,
  OWN.pixelWidth,
  OWN.pixelHeight,
  OWN.timestamp,
  OWN.block,
  OWN.simpleBlock,
]);

/** An id of 4 bytes and a size of 8. */
const LONGEST_HEAD = 12;

/** No picture that is asked for is larger; a size beyond is not ours. */
const LARGEST_BODY = 64 * 1024 * 1024;

interface Picture {
  number: number;
  width: number;
  height: number;
}

interface State {
  readonly head: Uint8Array;
  headLength: number;
  /** Bytes still to be passed over. */
  skip: number;
  id: number;
  /** The body under way and how much of it is there; null between elements. */
  body: Uint8Array | null;
  filled: number;
  readonly pictures: Picture[];
  clusterMs: number;
}

/**
 * Cuts a Matroska stream that ffmpeg writes into a pipe into its packets as they come. Raw pictures and JPEG files
 * of several sizes travel so through one pipe, each with its time. Nothing but the element under way is held.
 */
export function createPacketReader(): { push(chunk: Uint8Array): StreamPacket[] } {
  const state: State = {
    head: new Uint8Array(LONGEST_HEAD),
    headLength: 0,
    skip: 0,
    id: 0,
    body: null,
    filled: 0,
    pictures: [],
    clusterMs: 0,
  };
  return {
    push: (chunk) => {
      const packets: StreamPacket[] = [];
      let at = 0;
      while (at < chunk.length) at += takeSome(state, chunk.subarray(at), packets);
      return packets;
    },
  };
}

/** Takes bytes up to the end of a head, a body or a gap, and gives their number. */
function takeSome(state: State, bytes: Uint8Array, packets: StreamPacket[]): number {
  if (state.skip > 0) {
    const passed = Math.min(state.skip, bytes.length);
    state.skip -= passed;
    return passed;
  }
  const { body } = state;
  if (!body) return takeHead(state, bytes, packets);
  const part = bytes.subarray(0, body.length - state.filled);
  body.set(part, state.filled);
  state.filled += part.length;
  if (state.filled === body.length) finishBody(state, body, packets);
  return part.length;
}

/** One byte at a time until id and size are whole: heads are short, and may be cut anywhere. */
function takeHead(state: State, bytes: Uint8Array, packets: StreamPacket[]): number {
  state.head[state.headLength] = bytes[0] ?? 0;
  state.headLength += 1;
  const head = state.head.subarray(0, state.headLength);
  const id = readElementId(head, 0);
  const size = id && id.bytes <= head.length ? readElementSize(head, id.bytes) : null;
  if (!id || !size || id.bytes + size.bytes > head.length) {
    if (head.length === LONGEST_HEAD) throw new Error('ffmpeg’s packet stream is out of step');
    return 1;
  }
  state.headLength = 0;
  // The first element of all says what the stream is.
  if (state.id === 0 && id.value !== ELEMENT.ebml) throw new Error('ffmpeg’s packet stream is out of step');
  state.id = id.value ?? 0;
  enterElement(state, size.value, packets);
  return 1;
}

function enterElement(state: State, size: number | null, packets: StreamPacket[]): void {
  if (state.id === ELEMENT.trackEntry) state.pictures.push({ number: 0, width: 0, height: 0 });
  if (ENTERED.has(state.id)) return;
  if (size === null || size > LARGEST_BODY) throw new Error('ffmpeg’s packet stream is out of step');
  if (!TAKEN.has(state.id)) {
    state.skip = size;
    return;
  }
  state.body = new Uint8Array(size);
  state.filled = 0;
  if (size === 0) finishBody(state, state.body, packets);
}

function finishBody(state: State, body: Uint8Array, packets: StreamPacket[]): void {
  state.body = null;
  if (state.id === OWN.block || state.id === OWN.simpleBlock) {
    const packet = cutBlock(state, body);
    if (packet) packets.push(packet);
    return;
  }
  const value = body.reduce((sum, byte) => sum * 256 + byte, 0);
  if (state.id === OWN.timestamp) state.clusterMs = value;
  const picture = state.pictures.at(-1);
  if (!picture) return;
  if (state.id === OWN.trackNumber) picture.number = value;
  if (state.id === OWN.pixelWidth) picture.width = value;
  if (state.id === OWN.pixelHeight) picture.height = value;
}

/** A block: track number, signed 16-bit time within its cluster in milliseconds, flags, then the picture. */
function cutBlock({ pictures, clusterMs }: State, body: Uint8Array): StreamPacket | null {
  const number = readElementSize(body, 0);
  if (!number || body.length < number.bytes + 3) return null;
  const stream = pictures.findIndex((picture) => picture.number === number.value);
  const picture = pictures[stream];
  if (!picture) return null;
  const within = new DataView(body.buffer).getInt16(number.bytes);
  const atSeconds = Math.max(0, clusterMs + within) / MS_PER_SECOND;
  const { width, height } = picture;
  return { stream, width, height, atSeconds, bytes: body.subarray(number.bytes + 3) };
}
