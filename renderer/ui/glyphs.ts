/** One drawing on a 24 by 24 grid: lines are stroked, solids filled, dashes stroked with gaps. */
export interface GlyphDrawing {
  readonly lines?: string;
  readonly solids?: string;
  readonly dashes?: string;
  /** Width of the lines where it is not the usual 1.9. */
  readonly width?: number;
}

/** Every small drawing of the window; none is ever the only sign of what it means. */
export const GLYPHS = {
  order: {
    lines: 'M5 6C12 6 12 18 19 18M5 18C12 18 12 6 19 6',
    solids:
      'M1.6 6a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0 -4.8 0zM1.6 18a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0 -4.8 0zM17.6 6a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0 -4.8 0zM17.6 18a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0 -4.8 0z',
  },
  missing: {
    lines: 'M3.5 9V5.5H8M12 5.5h2M18 5.5h2.5V9M20.5 13v1M20.5 17v1.5H17M13 18.5h-2M7 18.5H3.5V16M3.5 13v-.5',
    solids: 'M10 12a2 2 0 1 0 4 0a2 2 0 1 0 -4 0z',
  },
  extra: { lines: 'M3 8h11v12h-11z', solids: 'M16.5 2.5h5v9h-5z' },
  retake: { lines: 'M3 3.5h11v7H3zM4.5 9.5l8-5', solids: 'M10 13h11v8H10z' },
  place: {
    lines: 'M16 12v9M12.5 21h7',
    solids: 'M10 2.5h12v9H10z',
    dashes: 'M1.9 19.5a3.6 1.9 0 1 0 7.2 0a3.6 1.9 0 1 0 -7.2 0z',
  },
  clock: {
    lines: 'M7 6.8A8 8 0 0 0 5 17M8.5 20.2a8 8 0 0 0 7 0M19 17a8 8 0 0 0-2-10.2M12 8v5M10 2.5h4',
    solids: 'M10.8 15.8a1.2 1.2 0 1 0 2.4 0a1.2 1.2 0 1 0 -2.4 0z',
  },
  outside: { lines: 'M4 4h9v16H4', solids: 'M16.2 12a2.8 2.8 0 1 0 5.6 0a2.8 2.8 0 1 0 -5.6 0z' },
  twice: {
    lines: 'M5 12C11 12 9 6.5 14 6.5M5 12c6 0 4 5.5 9 5.5',
    solids: 'M2 12a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0zM14 3.5h7v6h-7zM14 14.5h7v6h-7z',
  },
  clash: { lines: 'M12 2.5v19', solids: 'M2 7l7.5 5L2 17zM22 7l-7.5 5 7.5 5z' },
  short: { lines: 'M4 5v14M9.3 5v14M14.6 5v14M20 5v2.5M20 11v2M20 16.5V19', width: 2.4 },
  apart: {
    lines: 'M2.5 8h19M19 10.5v4',
    solids:
      'M2.4 8a2.6 2.6 0 1 0 5.2 0a2.6 2.6 0 1 0 -5.2 0zM9.4 8a2.6 2.6 0 1 0 5.2 0a2.6 2.6 0 1 0 -5.2 0zM16.4 17a2.6 2.6 0 1 0 5.2 0a2.6 2.6 0 1 0 -5.2 0z',
  },
  unread: { lines: 'M4 3h11l5 5v13H4zM9 11l5 6M14 11l-5 6' },
  consent: { lines: 'M5 21c0-5 3-7.5 7-7.5s7 2.5 7 7.5', solids: 'M8 3h8v7.5H8z' },
  tick: { lines: 'M4.5 13.5c2 1.5 3.2 3 4.5 5.5C11.5 12.5 15 7.5 20 4.5', width: 2.6 },
  cross: { lines: 'M6 6l12 12M18 6L6 18', width: 2.4 },
  pencil: { lines: 'M4 20l1.2-4.5L16 4.7l3.3 3.3L8.5 18.8zM13.5 7.2l3.3 3.3' },
  play: { solids: 'M6.5 4.5v15l13-7.5z' },
  pause: { solids: 'M6 4.5h4v15H6zM14 4.5h4v15h-4z' },
  loop: { lines: 'M7 7h8a4.5 4.5 0 0 1 0 10H8a4.5 4.5 0 0 1-3.5-7M9.5 3.5L6.5 7l3 3.5' },
  back: { lines: 'M15.5 5l-7 7 7 7' },
  fwd: { lines: 'M8.5 5l7 7-7 7' },
  down: { lines: 'M5 9l7 7 7-7' },
  undo: { lines: 'M5 9h9a5 5 0 0 1 0 10h-4M9 4.5L4.5 9 9 13.5' },
  redo: { lines: 'M19 9h-9a5 5 0 0 0 0 10h4M15 4.5L19.5 9 15 13.5' },
  half: { lines: 'M4 12a8 8 0 1 0 16 0a8 8 0 1 0 -16 0z', solids: 'M12 4a8 8 0 0 1 0 16z' },
  folder: { lines: 'M3 19V6h6l2 2.5h10V19z' },
  print: { lines: 'M7 9V3.5h10V9M7 17H3.5V9h17v8H17M7 14h10v6.5H7z' },
  plus: { lines: 'M12 5v14M5 12h14' },
  minus: { lines: 'M5 12h14' },
  drop: { lines: 'M12 3c3.5 4.5 6 7.3 6 11a6 6 0 0 1-12 0c0-3.7 2.5-6.5 6-11z' },
  unplaced: {
    lines: 'M8.5 5h11v8h-11z',
    solids:
      'M3 20.5a1.8 1.8 0 1 0 3.600 0a1.8 1.8 0 1 0 -3.600 0zM17.400 20.5a1.8 1.8 0 1 0 3.600 0a1.8 1.8 0 1 0 -3.600 0z',
    dashes: 'M11 13l-5 5.5M17 13l1.500 5.5',
  },
  other: { lines: 'M3 8l3-2h2c.3 2 2.700 2 3 0h2l3 2v3M3 8v10h8M13.500 17.500h7M18 14.500l3 3-3 3' },
  brief: { lines: 'M3 5v14M9 5v14', dashes: 'M9 12h12' },
  warn: {
    lines: 'M12 4L21.500 20h-19zM12 10v4.500',
    solids: 'M10.800 17.200a1.2 1.2 0 1 0 2.400 0a1.2 1.2 0 1 0 -2.400 0z',
  },
} as const satisfies Readonly<Record<string, GlyphDrawing>>;

/** The name of a small drawing. */
export type GlyphName = keyof typeof GLYPHS;
