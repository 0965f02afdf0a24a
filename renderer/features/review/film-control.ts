/** How a film runs at the moment. */
export interface FilmState {
  /** From where all films began together. */
  readonly seconds: number;
  readonly isPlaying: boolean;
  readonly rate: number;
  /** The stretch that is played again and again; null: none. */
  readonly loop: Stretch | null;
}

/** A part of a film. */
export interface Stretch {
  readonly fromSeconds: number;
  readonly toSeconds: number;
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
  /** Plays a stretch and pauses at its end; a loop that is on goes over to it. */
  readonly playStretch: (stretch: Stretch) => void;
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
  const { getState, subscribe, change } = openFilmState();
  // Where a stretch that was asked for ends; null: the film plays on.
  let until: number | null = null;
  const seek = (seconds: number) => {
    until = null;
    const to = Math.max(0, seconds);
    for (const film of films) film.video.currentTime = to + film.offset;
    change({ seconds: to });
  };
  const follow = () => {
    const [first] = films;
    const { isPlaying, loop } = getState();
    if (!first || !isPlaying) return;
    const seconds = Math.max(0, first.video.currentTime - first.offset);
    if (loop && seconds >= loop.toSeconds) seek(loop.fromSeconds);
    else if (until !== null && seconds >= until) stopAt(until);
    else change({ seconds });
    keepInStep(films);
    requestAnimationFrame(follow);
  };
  const play = () => {
    for (const { video } of films) startFilm(video, getState().rate);
    if (getState().isPlaying || films.length === 0) return;
    change({ isPlaying: true });
    requestAnimationFrame(follow);
  };
  const pause = () => {
    for (const { video } of films) video.pause();
    change({ isPlaying: false });
  };
  const stopAt = (seconds: number) => {
    pause();
    // The very end of a rep is the still that stands for it, and not yet the next one.
    seek(seconds - FRAME_SECONDS);
  };
  return {
    getState,
    subscribe,
    attach: (video, offset) => attachFilm(films, { video, offset }, { getState, change }),
    toggle: () => (getState().isPlaying ? pause() : play()),
    play,
    pause,
    seek,
    playStretch: ({ fromSeconds, toSeconds }) => {
      seek(fromSeconds);
      if (getState().loop) change({ loop: { fromSeconds, toSeconds } });
      else until = toSeconds;
      play();
    },
    step: (frames) => {
      pause();
      seek(getState().seconds + frames * FRAME_SECONDS);
    },
    setRate: (rate) => {
      for (const { video } of films) video.playbackRate = rate;
      change({ rate });
    },
    setLoop: (loop) => change({ loop }),
  };
}

function openFilmState() {
  const listeners = new Set<() => void>();
  let state: FilmState = { seconds: 0, isPlaying: false, rate: 1, loop: null };
  return {
    getState: () => state,
    subscribe: (listener: () => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    change: (part: Partial<FilmState>) => {
      state = { ...state, ...part };
      for (const listener of listeners) listener();
    },
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

function attachFilm(
  films: Attached[],
  film: Attached,
  { getState, change }: Pick<ReturnType<typeof openFilmState>, 'getState' | 'change'>,
): () => void {
  const { video, offset } = film;
  const stop = () => change({ isPlaying: false });
  // The film is there, or another one in its place: it takes up where the control is.
  const takeUp = () => {
    const { seconds, isPlaying, rate } = getState();
    if (seconds + offset > 0) video.currentTime = seconds + offset;
    if (isPlaying) startFilm(video, rate);
  };
  films.push(film);
  video.addEventListener('ended', stop);
  video.addEventListener('loadedmetadata', takeUp);
  return () => {
    video.removeEventListener('ended', stop);
    video.removeEventListener('loadedmetadata', takeUp);
    films.splice(films.indexOf(film), 1);
    if (films.length === 0) stop();
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
