import { BRING_IN } from '../../text/english/bring-in.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';

/** What belongs here and the one thing to do; also the sign that what hovers can be let go. */
export function DropZone({
  isOver,
  onChoose,
}: {
  readonly isOver: boolean;
  /** Null: something is here already, so no button is shown. */
  readonly onChoose: (() => void) | null;
}) {
  return (
    <section className="dropzone" aria-label={BRING_IN.dropLabel}>
      <Glyph name="folder" />
      <div>
        <h2>{isOver ? BRING_IN.dropNow : BRING_IN.dropHead}</h2>
        <p className="read">{BRING_IN.dropText}</p>
      </div>
      {onChoose && (
        <Button look="ink" onPress={onChoose}>
          {BRING_IN.choose}
        </Button>
      )}
    </section>
  );
}
