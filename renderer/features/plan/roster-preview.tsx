import type { CallOutput } from '../../../src-core/contract/calls.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { ROSTER } from '../../text/english/plan-squads.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceWord } from './choice-word.tsx';
import { RosterSourceLine } from './roster-source-line.tsx';
import type { RosterImportState } from './use-roster-import.ts';

type Preview = CallOutput<'previewRoster'>;

const LEFT = Object.entries(ROSTER.leftChoices) as readonly (readonly ['keep' | 'remove', string])[];

/** What a class list would change, before anything is changed. */
export function RosterPreview({
  list,
  preview: { source, merge, draft },
  names,
  onTake,
  onLeave,
}: {
  readonly list: RosterImportState;
  readonly preview: Preview;
  readonly names: LessonNames;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}) {
  const { left } = list.choice;
  return (
    <div className="roster-preview">
      {source && <RosterSourceLine source={source} list={list} />}
      {merge && (
        <ul className="roster-changes">
          {merge.added.length > 0 && (
            <li>
              <b>{ROSTER.added(merge.added.length)}</b>
              <ul className="roster-names">
                {merge.added.map(({ id, given, family, squad }) => (
                  <li key={id}>
                    {given} {family} <i className="pen">{names.squad(squad)}</i>
                  </li>
                ))}
              </ul>
            </li>
          )}
          {merge.changed.length > 0 && (
            <li>
              <b>{ROSTER.changed(merge.changed.length)}</b>
              <ul className="roster-names">
                {merge.changed.map(({ was, now }) => (
                  <li key={now.id}>
                    <s>
                      {was.given} {was.family}
                    </s>{' '}
                    {now.given} {now.family}
                  </li>
                ))}
              </ul>
            </li>
          )}
          {merge.left.length > 0 && (
            <li>
              <b>{ROSTER.left(merge.left.length)}</b>{' '}
              {merge.left.map(({ given, family }) => `${given} ${family}`).join(', ')}. {ROSTER.leftWords[0]}{' '}
              <ChoiceWord
                label={ROSTER.leftLabel}
                shown={ROSTER.leftChoices[left]}
                choices={LEFT}
                value={left}
                onChoose={(chosen) => list.choose({ left: chosen })}
              />
              {ROSTER.leftWords[1]}
            </li>
          )}
          {merge.back.length > 0 && <li>{ROSTER.back(merge.back.length)}</li>}
          {[merge.added, merge.changed, merge.left, merge.back].every((list) => list.length === 0) && (
            <li>
              <b>{ROSTER.nothingNew}</b>
            </li>
          )}
          {merge.unchanged > 0 && <li>{ROSTER.unchanged(merge.unchanged)}</li>}
        </ul>
      )}
      {merge && (
        <div className="rem">
          <Button look="ink" isDisabled={draft === null} onPress={onTake}>
            {ROSTER.take(merge.added.length)}
          </Button>
          <Button onPress={onLeave}>{ROSTER.leave}</Button>
        </div>
      )}
    </div>
  );
}
