import { GLYPHS, type GlyphDrawing, type GlyphName } from './glyphs.ts';

/** A small drawing in the colour of the text beside it, hidden from screen readers: the words stand next to it. */
export function Glyph({ name }: { readonly name: GlyphName }) {
  const { lines, solids, dashes, width = 1.9 }: GlyphDrawing = GLYPHS[name];
  const pen = {
    fill: 'none',
    stroke: 'currentColor',
    strokeWidth: width,
    strokeLinecap: 'round',
    strokeLinejoin: 'round',
  } as const;
  return (
    <svg viewBox="0 0 24 24" className="g" aria-hidden="true">
      {lines && <path d={lines} {...pen} />}
      {dashes && <path d={dashes} {...pen} strokeDasharray="2.6 2.2" />}
      {solids && <path d={solids} fill="currentColor" />}
    </svg>
  );
}
