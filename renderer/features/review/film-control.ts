/** How a film runs at the moment. */
export interface FilmState {
  /** From where all films began together. */
  readonly seconds: number;
  readonly isPlaying: boolean;
  readonly rate: number;
  /** The stretch that is played again and again; null: none. */
  readonly loop: { readonly fromSeconds: number; readonly toSeconds: number } | null;
}

/** One control over one film, or over several that run in step. */
export interface FilmControl {
  readonly getState: () => FilmState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Takes a film in; `offsetSeconds` is its moment that stands for 0. Gives the way to let it go. */
  readonly attach: (video: HTMLVideoElement, offsetSeconds: number) => () => void;
  readonly toggle: () => void;
  readonly play: () => void;
  readonly pause: () => void;
  readonly seek: (seconds: number) => void;
  /** Pauses and moves by frames; below 0: back. */
  readonly step: (frames: number) => void;
  readonly setRate: (rate: number) => void;
  readonly setLoop: (loop: FilmState['loop']) => void;
}

/** Speeds as multiples of the film's own, slowest first. */
export const RATES = [0.25, 0.5, 1, 2, 4] as const;

/** Tablets film 30 frames a second unless asked otherwise; a step need not be exact to be useful. */
const FRAME_SECONDS = 1 / 30;

/** Films further apart than this are put in step again. */
const APART_SECONDS = 0.12;

interface Attached {
  readonly video: HTMLVideoElement;
  readonly offset: number;
}

/** A control without a film yet. */
export function openFilmControl(): FilmControl {
  const films: Attached[] = [];
  const listeners = new Set<() => void>();
  let state: FilmState = { seconds: 0, isPlaying: false, rate: 1, loop: null };
  const change = (part: Partial<FilmState>) => {
    state = { ...state, ...part };
    for (const listener of listeners) listener();
  };
  const seek = (seconds: number) => {
    const to = Math.max(0, seconds);
    for (const film of films) film.video.currentTime = to + film.offset;
    change({ seconds: to });
  };
  const follow = () => {
    const [first] = films;
    if (!first || !state.isPlaying) return;
    const seconds = Math.max(0, first.video.currentTime - first.offset);
    if (state.loop && seconds >= state.loop.toSeconds) seek(state.loop.fromSeconds);
    else change({ seconds });
    keepInStep(films);
    requestAnimationFrame(follow);
  };
  const play = () => {
    for (const { video } of films) startFilm(video, state.rate);
    change({ isPlaying: films.length > 0 });
    requestAnimationFrame(follow);
  };
  const pause = () => {
    for (const { video } of films) video.pause();
    change({ isPlaying: false });
  };
  return {
    getState: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    attach: (video, offset) => attachFilm(films, { video, offset }, () => change({ isPlaying: false })),
    toggle: () => (state.isPlaying ? pause() : play()),
    play,
    pause,
    seek,
    step: (frames) => {
      pause();
      seek(state.seconds + frames * FRAME_SECONDS);
    },
    setRate: (rate) => {
      for (const { video } of films) video.playbackRate = rate;
      change({ rate });
    },
    setLoop: (loop) => change({ loop }),
  };
}

/** The speed above or below; the same at either end. */
export function shiftRate(rate: number, by: 1 | -1): number {
  const at = (RATES as readonly number[]).indexOf(rate);
  return RATES[Math.max(0, Math.min(RATES.length - 1, at + by))] ?? rate;
}

function startFilm(video: HTMLVideoElement, rate: number): void {
  video.playbackRate = rate;
  if (video.ended) video.currentTime = 0;
  // A film that cannot start says so by its own error event.
  video.play().catch(() => {});
}

function attachFilm(films: Attached[], film: Attached, onEnd: () => void): () => void {
  const begin = () => {
    film.video.currentTime = film.offset;
  };
  films.push(film);
  film.video.addEventListener('ended', onEnd);
  if (film.offset > 0) film.video.addEventListener('loadedmetadata', begin, { once: true });
  return () => {
    film.video.removeEventListener('ended', onEnd);
    film.video.removeEventListener('loadedmetadata', begin);
    films.splice(films.indexOf(film), 1);
    if (films.length === 0) onEnd();
  };
}

/** Players drift; the first one leads. */
function keepInStep([first, ...others]: readonly Attached[]): void {
  if (!first) return;
  const seconds = first.video.currentTime - first.offset;
  for (const { video, offset } of others) {
    if (Math.abs(video.currentTime - offset - seconds) > APART_SECONDS) video.currentTime = seconds + offset;
  }
}
