import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create, type Font } from 'fontkit';

/** The four hands that paper is set in: a serif for titles and clues, a sans for what is to be done. */
export type Hand = 'serif' | 'serif-italic' | 'sans' | 'sans-bold';

/** One file of a hand, which holds some of its scripts. */
export interface Face {
  /** Unique among all faces. */
  readonly name: string;
  readonly bytes: Buffer;
  readonly font: Font;
}

/** Letters of one face that stand side by side. */
export interface Run {
  readonly face: Face;
  readonly text: string;
}

/** A line of text by face, and the letters that no face has. */
export interface SetText {
  readonly runs: readonly Run[];
  readonly missing: string;
}

const FILES: Readonly<Record<Hand, string>> = {
  serif: 'gentium-book-plus/files/gentium-book-plus-*-700-normal.woff',
  'serif-italic': 'gentium-book-plus/files/gentium-book-plus-*-400-italic.woff',
  sans: 'source-sans-3/files/source-sans-3-*-400-normal.woff',
  'sans-bold': 'source-sans-3/files/source-sans-3-*-600-normal.woff',
};

/** What the packages split their letters into, the most used first. */
const SCRIPTS = [
  'latin',
  'latin-ext',
  'greek',
  'cyrillic',
  'vietnamese',
  'greek-ext',
  'cyrillic-ext',
] as const;

const faces = new Map<string, Face>();

/** Reads a face when its letters are first wanted: a lesson in English never reads the Greek one. */
function getFace(hand: Hand, script: (typeof SCRIPTS)[number]): Face {
  const name = `${hand} ${script}`;
  const known = faces.get(name);
  if (known) return known;
  const path = createRequire(import.meta.url).resolve(`@fontsource/${FILES[hand].replace('*', script)}`);
  const bytes = readFileSync(path);
  const font = create(bytes);
  if (!('layout' in font)) throw new Error(`${path} is a collection of fonts`);
  const face = { name, bytes, font };
  faces.set(name, face);
  return face;
}

function findFace(hand: Hand, letter: string): Face | null {
  const point = letter.codePointAt(0) ?? 0;
  for (const script of SCRIPTS) {
    const face = getFace(hand, script);
    if (face.font.hasGlyphForCodePoint(point)) return face;
  }
  return null;
}

/** Splits a text by the faces that hold its letters; composed forms are preferred, so that marks stay with letters. */
export function setText(text: string, hand: Hand): SetText {
  const runs: { face: Face; text: string }[] = [];
  let missing = '';
  for (const letter of text.normalize('NFC')) {
    const last = runs.at(-1);
    const isKept = last?.face.font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0);
    const face = isKept ? last?.face : findFace(hand, letter);
    if (!face) missing += letter;
    else if (last && last.face === face) last.text += letter;
    else runs.push({ face, text: letter });
  }
  return { runs, missing: [...new Set(missing)].join('') };
}

/** Width of letters of one face, kerning included, in units of the type's size. */
export function measureRun({ face, text }: Run): number {
  return face.font.layout(text).advanceWidth / face.font.unitsPerEm;
}
