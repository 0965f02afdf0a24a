/** A pinnie's pattern, so that its colour is never the only sign. Drawn on 20 by 24. */
export interface BibPattern {
  readonly lines?: string;
  readonly solids?: string;
  readonly width?: number;
}

const PATTERNS = {
  slant: { lines: 'M-2 8L10-4M-2 16L18-4M-2 24L22 0M4 26L22 8M12 26L22 16', width: 2.2 },
  dots: {
    solids:
      'M4.9 7a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0-3.2 0zM11.9 7a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0-3.2 0zM8.4 12a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0-3.2 0zM3.9 17.5a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0-3.2 0zM12.9 17.5a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0-3.2 0z',
  },
  posts: { lines: 'M6.5 0v24M10 0v24M13.5 0v24', width: 1.5 },
  chevrons: { lines: 'M0 9l10 5 10-5M0 15l10 5 10-5M0 3l10 5 10-5', width: 1.9 },
  bars: { lines: 'M0 7h20M0 11.5h20M0 16h20M0 20.5h20', width: 1.7 },
  checks: {
    solids: 'M3 9h4v4H3zM11 9h4v4h-4zM7 13h4v4H7zM15 13h4v4h-4zM3 17h4v5H3zM11 17h4v5h-4zM7 4h4v5H7z',
  },
  rings: {
    lines:
      'M7.6 9a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0-4.8 0zM3.6 16.5a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0-4.8 0zM11.6 16.5a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0-4.8 0z',
    width: 1.5,
  },
  crosses: { lines: 'M6 8l3 3M9 8l-3 3M12 12l3 3M15 12l-3 3M5 16l3 3M8 16l-3 3', width: 1.5 },
} as const satisfies Readonly<Record<string, BibPattern>>;

type PatternName = keyof typeof PATTERNS;

/** Patterns of the pinnie colours in common use; other colours take the pattern of their squad's place in the plan. */
const BY_NAME: Readonly<Record<string, PatternName>> = {
  teal: 'slant',
  amber: 'dots',
  plum: 'posts',
  moss: 'chevrons',
  slate: 'bars',
  coral: 'checks',
  navy: 'rings',
  chalk: 'crosses',
};

const NAMES = Object.keys(PATTERNS) as readonly PatternName[];

/** The pattern of a pinnie; `at` is its squad's place in the plan, from 0. */
export function getBibPattern(pinnie: string, at: number): BibPattern {
  const name = BY_NAME[pinnie.toLowerCase()] ?? NAMES[at % NAMES.length] ?? 'slant';
  return PATTERNS[name];
}

/** A tone of the same hue that stands out from a pinnie's colour (`#RRGGBB`): darker on light ones, lighter on dark. */
export function getBibTone(colour: string): string {
  const parts = [1, 3, 5].map((from) => Number.parseInt(colour.slice(from, from + 2), 16));
  const [red = 0, green = 0, blue = 0] = parts;
  const isLight = 0.299 * red + 0.587 * green + 0.114 * blue > 105;
  const mixed = parts.map((part) => Math.round(isLight ? part * 0.3 : part + (255 - part) * 0.78));
  return `#${mixed.map((part) => part.toString(16).padStart(2, '0')).join('')}`;
}
