import { moment, REVIEW } from '../../text/english/review.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { type CountSheet, findLineAt } from './count-sheet.ts';
import { type FilmControl, RATES } from './film-control.ts';
import { useFilmState } from './use-film.ts';

/** What runs the film: frames, play, loop, speed. */
export function Transport({
  control,
  sheet,
  lengthSeconds,
}: {
  readonly control: FilmControl;
  readonly sheet: CountSheet;
  readonly lengthSeconds: number;
}) {
  const isPlaying = useFilmState(control, (state) => state.isPlaying);
  const rate = useFilmState(control, (state) => state.rate);
  const isLooping = useFilmState(control, (state) => state.loop !== null);
  const line = useFilmState(control, (state) => findLineAt(sheet, state.seconds));
  const number = sheet.lines[line]?.number ?? null;
  return (
    <div className="ctl">
      <Button look="bare" label={REVIEW.frameBack} onPress={() => control.step(-1)}>
        {BACK}
      </Button>
      <Button label={REVIEW.playPause} onPress={control.toggle}>
        {isPlaying ? PAUSE : PLAY}
      </Button>
      <Button look="bare" label={REVIEW.frameOn} onPress={() => control.step(1)}>
        {ON}
      </Button>
      <span className="t">
        <FilmTime control={control} /> <span className="cap">{REVIEW.of(lengthSeconds)}</span>
      </span>
      <button
        type="button"
        className="btn"
        aria-pressed={isLooping}
        aria-label={REVIEW.loopLabel(number)}
        onClick={() => toggleLoop(control, sheet)}
      >
        <Glyph name="loop" />
        {REVIEW.loop(number)}
      </button>
      <span className="push" />
      <fieldset className="pick" aria-label={REVIEW.speed}>
        {RATES.map((one) => (
          <button
            key={one}
            type="button"
            className="btn"
            aria-pressed={one === rate}
            aria-label={REVIEW.speedLabel(one)}
            onClick={() => control.setRate(one)}
          >
            {REVIEW.speeds[one]}
          </button>
        ))}
      </fieldset>
    </div>
  );
}

const BACK = <Glyph name="back" />;
const ON = <Glyph name="fwd" />;
const PLAY = <Glyph name="play" />;
const PAUSE = <Glyph name="pause" />;

function FilmTime({ control }: { readonly control: FilmControl }) {
  return useFilmState(control, (state) => moment(state.seconds));
}

/** Loops the line that the film is in, or stops looping. */
export function toggleLoop(control: FilmControl, sheet: CountSheet): void {
  const { loop, seconds } = control.getState();
  const line = sheet.lines[findLineAt(sheet, seconds)] ?? sheet.lines[0];
  if (loop || !line) {
    control.setLoop(null);
    return;
  }
  control.setLoop({ fromSeconds: line.fromSeconds, toSeconds: line.toSeconds });
  control.seek(line.fromSeconds);
  control.play();
}
