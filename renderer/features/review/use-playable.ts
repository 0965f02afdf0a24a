import { useCallback, useEffect, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { ClipId } from '../../../src-core/matching/observation.ts';
import { getFilmUrl, getProxyUrl } from '../../client/media-urls.ts';

/** A film that this window can play, or how far it is from that. */
export interface Playable {
  readonly url: string;
  /** `making`: the window could not decode it, and a copy that it can is being made. */
  readonly state: 'ready' | 'making' | 'failed';
  readonly secondsLeft: number | null;
  readonly problems: readonly Problem[];
  /** To be told that the film at `url` does not play here. */
  readonly onUnplayable: () => void;
  readonly tryAgain: () => void;
}

interface Progress {
  readonly clip: ClipId;
  readonly state: 'film' | 'making' | 'proxy' | 'failed';
  readonly secondsLeft: number | null;
  readonly problems: readonly Problem[];
}

/** A clip's film: the file itself, and a film made from it where this window cannot decode that. */
export function usePlayable(client: DeskClient, lesson: LessonId, clip: ClipId): Playable {
  const start: Progress = { clip, state: 'film', secondsLeft: null, problems: [] };
  const [kept, setProgress] = useState(start);
  const progress = kept.clip === clip ? kept : start;
  const { state } = progress;
  const onUnplayable = useCallback(() => {
    setProgress((now) => {
      const isProxy = now.clip === clip && now.state === 'proxy';
      return { clip, state: isProxy ? 'failed' : 'making', secondsLeft: null, problems: [] };
    });
  }, [clip]);
  const tryAgain = () => setProgress(start);
  useEffect(() => {
    if (state !== 'making') return;
    const controller = new AbortController();
    const onProgress = (_: unknown, secondsLeft: number | null) =>
      setProgress({ clip, state: 'making', secondsLeft, problems: [] });
    void client
      .request('prepareProxy', { lesson, clip }, { signal: controller.signal, onProgress })
      .then((reply) => {
        if (controller.signal.aborted) return;
        setProgress({
          clip,
          state: reply.ok ? 'proxy' : 'failed',
          secondsLeft: null,
          problems: reply.problems,
        });
      });
    return () => controller.abort();
  }, [client, lesson, clip, state]);
  return {
    url: state === 'proxy' ? getProxyUrl(lesson, clip) : getFilmUrl(lesson, clip),
    state: state === 'making' || state === 'failed' ? state : 'ready',
    secondsLeft: progress.secondsLeft,
    problems: progress.problems,
    onUnplayable,
    tryAgain,
  };
}
