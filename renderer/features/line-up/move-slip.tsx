import { useState } from 'react';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import type { StepProps } from '../../client/steps.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { Button } from '../../ui/button.tsx';
import { SlipDialog } from '../../ui/slip-dialog.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import { buildMoveActs } from './move-acts.ts';
import { nameAskedClip } from './ticket-words.ts';

/** Puts a clip into another slot or squad, by the slot's number or by choice. */
export function MoveSlip({
  clip,
  props,
  onClose,
}: {
  readonly clip: ClipView;
  readonly props: StepProps;
  readonly onClose: () => void;
}) {
  const { lesson, names, desk } = props;
  const [squad, setSquad] = useState(clip.squad ?? lesson.plan.squads[0]?.code ?? '');
  const route = lesson.plan.squads.find(({ code }) => code === squad)?.route ?? [];
  const decide = (acts: readonly JournalAct[]) => {
    if (acts.length > 0) void desk.decide(...acts);
    onClose();
  };
  const press = (event: React.KeyboardEvent) => {
    const slot = Number(event.key) - 1;
    if (!/^[1-9]$/.test(event.key) || slot >= route.length) return;
    event.preventDefault();
    decide(buildMoveActs(clip, squad, slot));
  };
  const others = lesson.plan.squads.filter(({ code }) => code !== squad);
  return (
    <SlipDialog title={LINE_UP.moveTitle(nameAskedClip(clip, names))} onClose={onClose} onKey={press}>
      <div className="move">
        <p className="cap">
          <SquadMark squad={squad} /> {LINE_UP.moveHint}
        </p>
        <div className="rem">
          {route.map((station, slot) => (
            <Button
              // biome-ignore lint/suspicious/noArrayIndexKey: a slot is its place in the route.
              key={slot}
              className={slot === 0 ? 'first' : ''}
              onPress={() => decide(buildMoveActs(clip, squad, slot))}
            >
              {LINE_UP.slotChoice(slot, station)}
            </Button>
          ))}
        </div>
        <div className="rem">
          {others.map(({ code, name }) => (
            <Button key={code} look="bare" onPress={() => setSquad(code)}>
              {LINE_UP.toSquad(name)}
            </Button>
          ))}
        </div>
        <div className="rem">
          <Button onPress={() => decide([{ kind: 'clip-placed', clip: clip.id, slot: 'none' }])}>
            {LINE_UP.setAside}
          </Button>
          {clip.word.slot !== null && (
            <Button onPress={() => decide([{ kind: 'clip-placed', clip: clip.id, slot: null }])}>
              {LINE_UP.byItself}
            </Button>
          )}
        </div>
      </div>
    </SlipDialog>
  );
}
