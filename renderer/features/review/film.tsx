import { useEffect, useRef, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../../src-core/contract/desk-view.ts';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { getFilmUrl, getStillUrl } from '../../client/media-urls.ts';
import { REVIEW } from '../../text/english/review.ts';
import { afterPaint, useIsPainted } from '../../ui/after-paint.ts';
import type { FilmControl } from './film-control.ts';
import { FilmCover } from './film-cover.tsx';
import { FRAME_ASPECT, LaneNumbers, type NumberedLanes } from './lane-numbers.tsx';
import { usePlayable } from './use-playable.ts';

/** One clip's picture: its film, or the photo that was handed in instead. */
export function Film({
  client,
  lesson,
  clip,
  names,
  control,
  offsetSeconds = 0,
  numbers,
  poster = null,
}: {
  readonly client: DeskClient;
  readonly lesson: LessonId;
  readonly clip: ClipView;
  readonly names: LessonNames;
  readonly control: FilmControl;
  readonly offsetSeconds?: number;
  /** Performers to be numbered in the picture. */
  readonly numbers: NumberedLanes;
  /** What is shown until the film is there: JPEG in base64. */
  readonly poster?: string | null;
}) {
  const station = clip.assignment?.station ? names.station(clip.assignment.station) : names.clip(clip.id);
  if (clip.holds !== 'video') {
    return (
      <figure>
        <Photo lesson={lesson} clip={clip.id} alt={REVIEW.photoWords(station)} />
        <figcaption>{REVIEW.photo}</figcaption>
      </figure>
    );
  }
  return <Video {...{ client, lesson, clip, names, control, offsetSeconds, station, numbers, poster }} />;
}

/** The photo's own bytes; a still made from it where this window does not know its kind (HEIC). */
function Photo({
  lesson,
  clip,
  alt,
}: {
  readonly lesson: LessonId;
  readonly clip: string;
  readonly alt: string;
}) {
  const [isUnknown, setUnknown] = useState(false);
  const url = isUnknown ? getStillUrl(lesson, clip, 0, 720) : getFilmUrl(lesson, clip);
  return <img className="pic" src={url} alt={alt} onError={() => setUnknown(true)} />;
}

function Video(props: {
  readonly client: DeskClient;
  readonly lesson: LessonId;
  readonly clip: ClipView;
  readonly names: LessonNames;
  readonly control: FilmControl;
  readonly offsetSeconds: number;
  readonly station: string;
  readonly numbers: NumberedLanes;
  readonly poster: string | null;
}) {
  const { client, lesson, clip, names, control, offsetSeconds, station, numbers, poster } = props;
  const [aspect, setAspect] = useState(FRAME_ASPECT);
  const playable = usePlayable(client, lesson, clip.id);
  const isPainted = useIsPainted();
  const video = useRef<HTMLVideoElement>(null);
  const { url, onUnplayable } = playable;
  useEffect(() => {
    const element = video.current;
    return element ? control.attach(element, offsetSeconds) : undefined;
  }, [control, offsetSeconds]);
  useEffect(() => {
    const element = video.current;
    if (!element) return;
    const callOff = afterPaint(() => {
      element.src = url;
    });
    return () => {
      callOff();
      // A film that is only taken off the page keeps its connection, and a browser has few: soon no decision gets
      // through. Emptied, it lets go at once.
      element.pause();
      afterPaint(() => {
        if (element.isConnected) return;
        element.removeAttribute('src');
        element.load();
      });
    };
  }, [url]);
  return (
    <figure>
      <video
        ref={video}
        className="pic"
        preload="auto"
        playsInline
        tabIndex={-1}
        {...(poster !== null && { poster: `data:image/jpeg;base64,${poster}` })}
        aria-label={REVIEW.filmWords(station)}
        onClick={control.toggle}
        onError={onUnplayable}
        // The film's own picture, and sharp: a poster would stand before it until it is played.
        onLoadedData={({ currentTarget }) => currentTarget.removeAttribute('poster')}
        onLoadedMetadata={({ currentTarget }) => {
          // Sound alone was decoded: the picture's codec is not known here.
          const { videoWidth, videoHeight } = currentTarget;
          if (videoWidth === 0) onUnplayable();
          else setAspect(videoWidth / videoHeight);
        }}
      />
      <LaneNumbers {...numbers} onMove={isPainted ? numbers.onMove : null} aspect={aspect} />
      {playable.state !== 'ready' && <FilmCover playable={playable} names={names} />}
    </figure>
  );
}
