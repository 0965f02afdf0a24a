import type { LessonId } from '../../../src-core/contract/desk-view.ts';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import { getStillUrl } from '../../client/media-urls.ts';
import { moment, REVIEW } from '../../text/english/review.ts';
import { type CountLine, type CountSheet, findLineAt, getStillMoment } from './count-sheet.ts';
import type { FilmControl } from './film-control.ts';
import { useFilmState } from './use-film.ts';

/** Twice the smallest height that a still is shown at, for screens with fine pixels. */
const STILL_HEIGHT = 96;

/** One still per line: hovering shows its moment in the film, pressing plays its stretch. */
export function CountLines({
  lesson,
  clip,
  sheet,
  control,
}: {
  readonly lesson: LessonId;
  readonly clip: ClipView;
  readonly sheet: CountSheet;
  readonly control: FilmControl;
}) {
  const current = useFilmState(control, ({ seconds }) => findLineAt(sheet, seconds));
  return (
    <ol className="reps">
      {sheet.lines.map((line, at) => (
        <li
          // biome-ignore lint/suspicious/noArrayIndexKey: the next clip's lines take the places of this one's
          key={at}
          className={at === current ? 'cur' : ''}
          ref={at === current ? keepInView : null}
        >
          <button
            type="button"
            aria-label={label(line)}
            aria-current={at === current}
            onClick={() => control.playStretch(line)}
            onPointerEnter={() => {
              if (!control.getState().isPlaying) control.seek(getStillMoment(line));
            }}
          >
            <b>{line.number ?? moment(line.atSeconds)}</b>
            <span className="st">
              <Still lesson={lesson} clip={clip} line={line} />
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}

function Still({
  lesson,
  clip,
  line: { jpeg, atSeconds },
}: {
  readonly lesson: LessonId;
  readonly clip: ClipView;
  readonly line: CountLine;
}) {
  if (jpeg !== null) return <img src={`data:image/jpeg;base64,${jpeg}`} alt="" />;
  const url = getStillUrl(lesson, clip.id, atSeconds, STILL_HEIGHT);
  return <img src={url} alt="" decoding="async" fetchPriority="low" ref={letGo} />;
}

/** A sheet longer than the window follows the film. */
function keepInView(line: HTMLLIElement | null): void {
  line?.scrollIntoView({ block: 'nearest' });
}

/** A still that nobody waits for any more gives its connection back. */
function letGo(image: HTMLImageElement): () => void {
  return () => image.removeAttribute('src');
}

function label({ number, atSeconds }: CountLine): string {
  return number === null ? REVIEW.stillLabel(atSeconds) : REVIEW.repLabel(number, atSeconds);
}
