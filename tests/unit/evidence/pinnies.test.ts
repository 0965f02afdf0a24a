import { describe, expect, test } from 'vitest';
import { buildMedianFrame } from '../../../src-core/evidence/median-frame.ts';
import { listMovingColours } from '../../../src-core/evidence/moving-colours.ts';
import { findPinnieSquads, type PinnieClip } from '../../../src-core/evidence/pinnie-squad.ts';
import { drawPlace } from './draw-place.ts';

const squads = [
  { code: 'teal', pinnie: { name: 'teal', colour: '#1F8A86' } },
  { code: 'amber', pinnie: { name: 'amber', colour: '#E9A92B' } },
  { code: 'plum', pinnie: { name: 'plum', colour: '#8A4A86' } },
];
const LAB = { teal: [52, -30, -6], amber: [73, 13, 68], plum: [41, 36, -22], skin: [60, 18, 20] } as const;
const clip = (
  name: string,
  squad: string | null,
  colours: Partial<Record<keyof typeof LAB, number>>,
): PinnieClip => ({
  clip: name,
  squad,
  colours: Object.entries(colours).map(([key, share]) => ({ lab: LAB[key as keyof typeof LAB], share })),
});
const lesson = [
  clip('t1', 'teal', { teal: 0.2, skin: 0.2 }),
  clip('t2', 'teal', { teal: 0.25, skin: 0.1 }),
  clip('a1', 'amber', { amber: 0.2, skin: 0.2 }),
  clip('p1', 'plum', { plum: 0.15, skin: 0.2 }),
];

describe('the colours that move', () => {
  test('are the walker’s and not the wall’s', () => {
    const frames = [10, 30, 50, 70, 90].map((x) =>
      drawPlace({ seed: 4, person: { x, yuv: [110, 150, 80] } }),
    );
    const background = buildMedianFrame(frames);
    if (!background) throw new Error('there are frames');
    const colours = listMovingColours(frames, background);
    expect(colours[0]?.share).toBeGreaterThan(0.9);
    expect(colours[0]?.lab[1]).toBeLessThan(-20);
  });

  test('are none where nothing moves', () => {
    const still = drawPlace({ seed: 4 });
    expect(listMovingColours([still, still], still)).toEqual([]);
  });
});

describe('another squad’s pinnies', () => {
  test('are named where they fit clearly better', () => {
    const found = findPinnieSquads([...lesson, clip('x', 'teal', { amber: 0.12, teal: 0.02 })], squads);
    expect([...found]).toEqual([['x', { squad: 'amber', share: 0.12 }]]);
  });

  test('are named for a clip that is nobody’s', () => {
    const found = findPinnieSquads([...lesson, clip('x', null, { plum: 0.12 })], squads);
    expect(found.get('x')?.squad).toBe('plum');
  });

  test.each([
    ['the squad wears its own', { teal: 0.2 }],
    ['both are seen', { teal: 0.08, amber: 0.12 }],
    ['only a little of another is seen', { amber: 0.05 }],
    ['only skin is seen', { skin: 0.6 }],
    ['nothing moves', {}],
  ])('are not named where %s', (_, colours) => {
    expect(findPinnieSquads([...lesson, clip('x', 'teal', colours)], squads).size).toBe(0);
  });

  test('are not seen in a wall that all clips show', () => {
    const walled = lesson.map((one) => ({
      ...one,
      colours: [...one.colours, { lab: LAB.amber, share: 0.2 }],
    }));
    expect(findPinnieSquads(walled, squads).size).toBe(0);
  });
});
