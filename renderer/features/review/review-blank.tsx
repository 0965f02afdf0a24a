import type { ReactNode } from 'react';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import type { GlyphName } from '../../ui/glyphs.ts';

/** Review without a clip on the desk: what that means and the one thing to do, above the class card. */
export function ReviewBlank({
  glyph,
  title,
  text,
  remedy,
  children,
}: {
  readonly glyph: GlyphName;
  readonly title: string;
  readonly text: readonly string[];
  readonly remedy: { readonly name: string; readonly go: () => void } | null;
  readonly children: ReactNode;
}) {
  return (
    <section className="sheet blank" aria-label={title}>
      <div className="in">
        <Glyph name={glyph} />
        <h1>{title}</h1>
        {text.map((sentence) => (
          <p key={sentence} className="read">
            {sentence}
          </p>
        ))}
        {remedy && (
          <Button look="ink" onPress={remedy.go} isAutoFocused>
            {remedy.name}
          </Button>
        )}
        <div className="fullc">{children}</div>
      </div>
    </section>
  );
}
