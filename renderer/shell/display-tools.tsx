import { FRAME } from '../text/english/window.ts';
import { Glyph } from '../ui/glyph.tsx';
import { changePreferences, usePreferences } from '../ui/preferences.ts';

const THEMES = ['auto', 'light', 'dark'] as const;
const SIZES = [100, 125, 150, 200];

/** Size of text and light or dark, each a press further. */
export function DisplayTools() {
  const { theme, textPercent } = usePreferences();
  const nextTheme = THEMES[(THEMES.indexOf(theme) + 1) % THEMES.length] ?? 'auto';
  const nextSize = SIZES.find((size) => size > textPercent) ?? 100;
  return (
    <>
      <button
        type="button"
        className="btn bare"
        aria-label={FRAME.textSize(textPercent)}
        title={FRAME.textSize(textPercent)}
        onClick={() => changePreferences({ textPercent: nextSize })}
      >
        {FRAME.textSign}
      </button>
      <button
        type="button"
        className="btn bare"
        aria-label={FRAME.theme[theme]}
        title={FRAME.theme[theme]}
        onClick={() => changePreferences({ theme: nextTheme })}
      >
        <Glyph name="half" />
      </button>
    </>
  );
}
