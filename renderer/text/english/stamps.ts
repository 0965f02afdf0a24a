import type { Stamp, StampProblem, StampReason, StampSource } from '../../../src-core/intake/stamp.ts';
import { span } from './amounts.ts';

const SOURCES: Readonly<Record<StampSource, string>> = {
  'recording-key': 'the recording date written by the tablet',
  'recorded-tag': 'the recording date written in the file',
  'day-tag': 'the day tag',
  'exif-original': 'the photo’s date taken',
  'movie-header': 'the movie header',
  'track-header': 'the track header',
  'media-header': 'the media header',
  'segment-date': 'the date the file was put together',
  'riff-date': 'the AVI date',
  'file-name': 'the file’s name',
  'file-time': 'the file’s own date',
  none: 'nothing',
};

const REASONS: Readonly<Record<StampReason, string>> = {
  'recording-date-written': 'The tablet wrote when the recording began.',
  'modified-after-duration': 'The header’s two dates lie one clip length apart, so the first is the start.',
  'name-plus-duration-is-header':
    'The name’s time plus the clip’s length is the header’s date, so that is the stop.',
  'name-agrees-with-header': 'The name and the header tell the same start.',
  'android-writes-at-stop': 'Android tablets write the header when the recording stops.',
  'exif-original-written': 'The photo says when it was taken.',
  'header-alone': 'Only the header has a date; whether it is the start or the stop is not known.',
  'header-local-by-custom': 'Only the header has a date, and recorders of this kind often write local time.',
  'file-creation-only': 'The date says when the file was put together, not when it was filmed.',
  'name-only': 'Only the name has a time.',
  'name-date-only': 'Only the name has a date, without a time.',
  'file-time-only': 'Only the file’s own date is left, and copying changes that.',
  'local-time-ambiguous': 'This local time came twice that night, when the clocks went back.',
  'local-time-skipped': 'This local time never came: the clocks went forward over it.',
  'header-implausible': 'The header’s date cannot be true.',
  'nothing-usable': 'The file has no date that can be used.',
};

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Where a stamp's date came from, as part of a sentence. */
export function nameSource(source: StampSource): string {
  return SOURCES[source];
}

/** In one line why a stamp was believed. */
export function explainStamp(stamp: Stamp): string {
  return REASONS[stamp.reason];
}

/** Something odd about a clip's dates, in one line. */
export function describeStampProblem(problem: StampProblem): string {
  switch (problem.code) {
    case 'stamp-header-unusable':
      return `The date in ${SOURCES[problem.field]} (${problem.raw}) cannot be used.`;
    case 'stamp-sources-disagree':
      return `${capital(SOURCES[problem.chosen])} and ${SOURCES[problem.other]} are ${span(problem.differenceSeconds)} apart.`;
    case 'stamp-zone-unknown':
      return `${capital(SOURCES[problem.source])} does not say its time zone; the school’s is assumed where it is known.`;
    case 'stamp-local-ambiguous':
      return `${problem.local} came twice, when the clocks went back.`;
    case 'stamp-local-skipped':
      return `${problem.local} never came: the clocks went forward over it.`;
    case 'stamp-date-without-time':
      return `${problem.date} is a date without a time.`;
  }
}
