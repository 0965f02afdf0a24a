import type { LumaFrame } from '../../src-core/evidence/luma-frame.ts';
import { readCodes } from '../../src-core/host/card-reader.ts';
import { formatStationCard } from '../../src-core/lesson/card-text.ts';
import { buildQrSymbol, type QrLevel, QUIET_MODULES } from '../../src-core/platform/qr-symbol.ts';
import { seededRandom } from '../../src-core/platform/seeded-random.ts';
import { buildCardCode } from '../../src-core/printing/card-code.ts';
import type { BenchReport } from './report.ts';

const LEVELS = ['H', 'Q'] as const;

/** The longest text of a card without a demonstration, and one with an address of usual length before it. */
const CARD = { lesson: 'LONG-HARBOUR', station: 'C12', revision: 200 };
const TEXTS = [
  formatStationCard(CARD),
  formatStationCard({ ...CARD, demonstration: 'https://harbour.example/demo/alternating-lunges' }),
];

/** Width of a station card's code, printed, and the dots it is printed with at 300 a inch. */
const WIDTH_MM = 84;
const PRINTED_DOTS = Math.round((WIDTH_MM / 25.4) * 300);

/** How wide it is in the picture: from as far as a card says at the most, and from half of that. */
const FILMED_PIXELS = [174, 348];

/** What happens to cards in a hall: each a share of the symbol that is lost, and what is seen there instead. */
const DAMAGES = [
  ...[0.03, 0.06, 0.12].map((share) => ({ kind: 'covered' as const, share })),
  ...[0.05, 0.1, 0.2].map((share) => ({ kind: 'blurred' as const, share })),
];

const DRAWS = 40;
const NOISE = 5;

/**
 * Prints how many damaged cards are read at each level of correction, printed equally wide: covered in up to three
 * places by something light, dark or grey, or blurred there as by rain; the same places for both levels.
 */
export async function benchCardDamage({ print, hold }: BenchReport): Promise<void> {
  for (const [at, text] of TEXTS.entries()) {
    const shares = new Map<QrLevel, number>();
    for (const level of LEVELS) {
      const found = await countRead(text, level);
      const all = [...found.values()].reduce((sum, one) => sum + one, 0);
      const each = FILMED_PIXELS.length * DRAWS;
      shares.set(level, all / (each * DAMAGES.length));
      const told = [...found].map(([name, read]) => `${name} ${(read / each).toFixed(2)}`).join(', ');
      print(`${text} at ${level}, ${buildQrSymbol(text, level).size} modules: ${told}`);
    }
    const [high = 0, quartile = 0] = LEVELS.map((level) => shares.get(level));
    const chosen = buildCardCode(text, WIDTH_MM).level;
    const what = `damaged cards ${at === 0 ? 'without' : 'with'} an address, read at H ${high.toFixed(3)}, at Q ${quartile.toFixed(3)}`;
    const gain = chosen === 'H' ? high - quartile : quartile - high;
    hold({ what: `${what}: gained by ${chosen}, as printed`, figure: gain, bar: ['at least', 0] });
  }
}

async function countRead(text: string, level: QrLevel): Promise<ReadonlyMap<string, number>> {
  const found = new Map<string, number>();
  for (const width of FILMED_PIXELS) {
    const code = filmCode(text, level, width);
    for (const damage of DAMAGES) {
      const name = `${damage.kind} ${damage.share}`;
      for (let draw = 1; draw <= DRAWS; draw++) {
        const isRead = (await readCodes(spoil(code, damage, draw))).includes(text);
        found.set(name, (found.get(name) ?? 0) + (isRead ? 1 : 0));
      }
    }
  }
  return found;
}

/** A code as a camera sees it, whole, and as it would be seen through drops everywhere. */
interface FilmedCode {
  /** Of the picture, quiet zone included, in pixels. */
  readonly side: number;
  /** Of the symbol alone, in pixels. */
  readonly width: number;
  readonly sharp: Float32Array;
  readonly soft: Float32Array;
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly tone: number;
}

/** The code as printed, averaged down to the picture's pixels. */
function filmCode(text: string, level: QrLevel, width: number): FilmedCode {
  const { size, modules } = buildQrSymbol(text, level);
  const dots = PRINTED_DOTS / size;
  const getInk = (x: number, y: number): number => {
    const [column, row] = [Math.floor(x / dots), Math.floor(y / dots)];
    if (Math.min(column, row) < 0 || Math.max(column, row) >= size) return 225;
    return modules[row * size + column] === 1 ? 35 : 225;
  };
  const side = Math.round(width * (1 + (2 * QUIET_MODULES) / size));
  const scale = PRINTED_DOTS / width;
  const film = (reach: number) =>
    Float32Array.from({ length: side * side }, (_, at) => {
      const [column, row] = [at % side, Math.floor(at / side)].map((one) => one + 0.5 - (side - width) / 2);
      return averageAround((column ?? 0) * scale, (row ?? 0) * scale, reach, getInk);
    });
  return { side, width, sharp: film(scale / 2), soft: film(dots * 1.5) };
}

/** The damage upon it, and a camera's grain. */
function spoil({ side, width, sharp, soft }: FilmedCode, damage: Damage, seed: number): LumaFrame {
  const random = seededRandom(seed);
  const spots = drawSpots(damage.share, random);
  const luma = Uint8Array.from(sharp, (clean, at) => {
    const [x, y] = [at % side, Math.floor(at / side)].map((one) => (one - (side - width) / 2) / width);
    const spot = findSpot(spots, x ?? 0, y ?? 0);
    const seen = !spot ? clean : damage.kind === 'covered' ? spot.tone : (soft[at] ?? clean);
    const grain = (random() + random() + random() + random() - 2) * Math.sqrt(3);
    return Math.max(0, Math.min(255, Math.round(seen + NOISE * grain)));
  });
  return { width: side, height: side, atSeconds: 0, luma };
}

type Damage = (typeof DAMAGES)[number];

/** One to three round places that make up the share together; they may reach over the edge and over each other. */
function drawSpots(share: number, random: () => number): readonly Spot[] {
  const count = 1 + Math.floor(random() * 3);
  const radius = Math.sqrt(share / count / Math.PI);
  return Array.from({ length: count }, () => ({
    x: random(),
    y: random(),
    radius,
    tone: [40, 130, 235][Math.floor(random() * 3)] ?? 130,
  }));
}

function findSpot(spots: readonly Spot[], x: number, y: number): Spot | undefined {
  return spots.find((spot) => (x - spot.x) ** 2 + (y - spot.y) ** 2 < spot.radius ** 2);
}

/** The mean over a square around a point, of seven samples each way. */
function averageAround(
  x: number,
  y: number,
  reach: number,
  getInk: (x: number, y: number) => number,
): number {
  let sum = 0;
  for (let up = -3; up <= 3; up++)
    for (let left = -3; left <= 3; left++) sum += getInk(x + (left / 3.5) * reach, y + (up / 3.5) * reach);
  return sum / 49;
}
