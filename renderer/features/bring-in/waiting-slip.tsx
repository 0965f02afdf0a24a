import { buildMoveTarget } from '../../client/move-target.ts';
import type { StepProps } from '../../client/steps.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import { describeFlag } from '../../text/english/flags.ts';
import { Button } from '../../ui/button.tsx';
import { ClipStill } from '../../ui/clip-still.tsx';
import { FlagTag } from '../../ui/flag-tag.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { nameRemedy } from './remedy-words.ts';
import type { Remedy, WaitingItem } from './waiting.ts';

/** One thing that waits: what it is, a still, one inked remedy and the others. */
export function WaitingSlip({
  item,
  lesson,
  desk,
  deskView,
  names,
  target,
  go,
  onClock,
}: StepProps & { readonly item: WaitingItem; readonly onClock: (squad: string) => void }) {
  const { key, flag, clip, remedies } = item;
  const run = (remedy: Remedy) => {
    if (remedy.kind === 'set-clock') onClock(remedy.squad);
    else if (remedy.kind === 'choose-slot') go('line-up', buildMoveTarget(remedy.clip));
    else void desk.decide(...remedy.acts);
  };
  const name = clip ? names.clip(clip.id) : '';
  return (
    <li className={`pr ${key === target ? 'sel' : ''}`} data-key={key}>
      {flag ? (
        <FlagTag flag={flag.flag} tone="soft" />
      ) : (
        <span className="flag soft">
          <Glyph name="unplaced" />
          {BRING_IN.nobodys}
        </span>
      )}
      <div className="pb">
        {clip && clip.holds === 'video' && (
          <ClipStill
            lesson={lesson.lesson}
            clip={clip}
            name={BRING_IN.still(name)}
            isThere={deskView.hasFfmpeg}
          />
        )}
        <p>
          <b>{flag ? names.squad(flag.flag.squad) : name}</b>
          {flag && clip && <span className="file">, {name}</span>}
          {'. '}
          {flag ? describeFlag(flag.flag, names).what : BRING_IN.nobodysText(clip?.path ?? '')}
        </p>
      </div>
      <div className="rem">
        {remedies.map((remedy, at) => (
          <Button
            key={nameRemedy(remedy, names)}
            look={at === 0 && flag ? 'ink' : 'plain'}
            onPress={() => run(remedy)}
          >
            {nameRemedy(remedy, names)}
          </Button>
        ))}
      </div>
    </li>
  );
}
