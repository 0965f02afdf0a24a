import type { Flag, FlagCode } from '../../src-core/matching/flag.ts';
import { nameOneFlag } from '../text/english/flags.ts';
import { Glyph } from './glyph.tsx';
import type { GlyphName } from './glyphs.ts';

const FLAG_GLYPHS: Readonly<Record<FlagCode, GlyphName>> = {
  'out-of-order': 'order',
  missing: 'missing',
  extra: 'extra',
  retake: 'retake',
  'wrong-place': 'place',
  unplaced: 'unplaced',
  'clock-doubtful': 'clock',
  'outside-period': 'outside',
  'handed-in-twice': 'twice',
  'same-footage': 'twice',
  'other-squad': 'other',
  unreadable: 'unread',
  'too-short': 'brief',
};

/** The drawing of a flag. */
export function getFlagGlyph(code: FlagCode): GlyphName {
  return FLAG_GLYPHS[code];
}

/** A swallow-tailed tag: shape, drawing, word and colour together. `done`: settled, so no accent. */
export function FlagTag({
  flag,
  tone,
  word,
}: {
  readonly flag: Flag;
  readonly tone: 'loud' | 'soft' | 'done';
  /** Said instead of the flag's own name. */
  readonly word?: string;
}) {
  return (
    <span className={`flag ${tone}`}>
      <Glyph name={FLAG_GLYPHS[flag.code]} />
      {word ?? nameOneFlag(flag)}
    </span>
  );
}
