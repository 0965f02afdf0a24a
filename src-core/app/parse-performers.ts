import { MOST_LANES } from '../marking/given-lanes.ts';

/** Reads `4`, or places such as `0.2,0.5,0.8`; a lone figure is a number of performers. Null: neither. */
export function parsePerformers(text: string): number | number[] | null {
  const parts = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (parts.length === 1) {
    const [count = 0] = parts;
    return Number.isInteger(count) && count >= 1 && count <= MOST_LANES ? count : null;
  }
  const arePlaces = parts.length <= MOST_LANES && parts.every((part) => part >= 0 && part <= 1);
  return arePlaces ? parts : null;
}
