import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { BoundedBytes } from '../bounded-bytes.ts';
import { readLetters } from '../byte-numbers.ts';
import type { MediaFacts } from '../media-facts.ts';
import type { MediaProblem } from '../media-problem.ts';
import { noteRecorder } from '../recorder.ts';
import { readFragment } from './moof.ts';
import { readMovie } from './moov.ts';
import { type MovieDraft, startMovie } from './movie-draft.ts';
import { findMovieDuration } from './movie-duration.ts';
import { readSegmentIndex } from './sidx.ts';
import { type Box, printable, walkTopBoxes } from './walk-boxes.ts';

/** Reads a file of ISO base media or QuickTime boxes: MP4, MOV, 3GP and their fragmented forms. */
export async function readBmff(
  bytes: BoundedBytes,
  container: 'mp4' | 'quicktime',
): Promise<Outcome<MediaFacts, MediaProblem>> {
  const draft = startMovie();
  const ended = await walkTopBoxes(bytes, (box) => readTopBox(bytes, box, draft));
  // Garbage after a movie that has been read is not worth a word unless nothing else was found.
  if (ended && (!draft.hasMovieBox || ended.code === 'media-reading-limit')) draft.problems.push(ended);
  if (bytes.isSpent()) noteOnce(draft, { code: 'media-reading-limit' });
  const problems = draft.problems.slice(0, 16);
  if (!draft.hasMovieBox) return problems.length > 0 ? fail(...problems) : fail({ code: 'media-no-index' });
  const picture = draft.tracks.find(({ handler }) => handler === 'vide');
  if (!picture) problems.push({ code: 'media-no-picture' });
  if (!picture && draft.dates.length === 0) return fail(...problems);
  return succeed(
    {
      container,
      holds: picture ? 'video' : 'sound',
      durationSeconds: findMovieDuration(draft),
      dates: draft.dates,
      modifiedMs: draft.modifiedMs,
      recorder: draft.recorder,
      codec: picture?.codec ?? null,
    },
    problems,
  );
}

async function readTopBox(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  if (box.missingBytes > 0) draft.problems.push({ code: 'media-cut-short', missingBytes: box.missingBytes });
  switch (box.type) {
    case 'ftyp': {
      const brand = readLetters(await bytes.read(box.bodyStart, 4), 0);
      return noteRecorder(draft.recorder, 'brand', printable(brand).trim());
    }
    case 'moov':
      return draft.hasMovieBox ? undefined : readMovie(bytes, box, draft);
    case 'moof':
      return readFragment(bytes, box, draft);
    case 'sidx':
      return readSegmentIndex(bytes, box, draft);
  }
}

function noteOnce(draft: MovieDraft, problem: MediaProblem): void {
  if (!draft.problems.some(({ code }) => code === problem.code)) draft.problems.push(problem);
}
