import type { ClipView, FlagView } from '../../../src-core/contract/lesson-view.ts';
import type { StepProps } from '../../client/steps.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { ClipStill } from '../../ui/clip-still.tsx';

/** Stills of the clip that is flagged and of the one it is held against. */
export function FlagEvidence({ entry, props }: { readonly entry: FlagView; readonly props: StepProps }) {
  const { lesson, names, deskView } = props;
  const clips = listEvidence(entry).flatMap((id) => lesson.clips.find((clip) => clip.id === id) ?? []);
  if (clips.length === 0) return null;
  return (
    <div className="ev">
      {clips.map((clip) => (
        <figure key={clip.id}>
          <ClipStill
            lesson={lesson.lesson}
            clip={clip}
            name={nameStill(clip, props)}
            isThere={deskView.hasFfmpeg}
          />
          <figcaption className="cap">
            {clip.assignment?.station ?? LINE_UP.unknownStation}{' '}
            {clip.time?.startMs != null && names.times.second(clip.time.startMs)}
          </figcaption>
        </figure>
      ))}
    </div>
  );
}

function listEvidence({ flag }: FlagView): readonly string[] {
  if (flag.code === 'out-of-order') return [flag.clip, flag.against.clip];
  if (flag.code === 'retake') return [flag.clip, flag.counts];
  if (flag.code === 'missing') return flag.candidates.slice(0, 2);
  return flag.clip === null ? [] : [flag.clip];
}

function nameStill(clip: ClipView, { names }: StepProps): string {
  const startMs = clip.time?.startMs ?? null;
  return LINE_UP.evidence(
    clip.squad ? names.squad(clip.squad) : '',
    clip.assignment?.station ?? LINE_UP.unknownStation,
    startMs === null ? LINE_UP.noTime : names.times.minute(startMs),
  );
}
