import { useState } from 'react';
import type { StepProps } from '../../client/steps.ts';
import { count } from '../../text/english/amounts.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import { nameAside } from '../../text/english/circuit.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import { groupAside } from './set-aside.ts';

/** What was set aside, what was noticed, and who is not to be shown; quiet, and there on request. */
export function AsideNote({ lesson, desk, names }: StepProps) {
  const [open, setOpen] = useState<'aside' | 'notices' | null>(null);
  const groups = groupAside(lesson);
  const hidden = lesson.pupils.filter(({ stills }) => !stills).map(({ given }) => given);
  const words = groups.map(
    ({ reason, clips }) => `${capital(nameAside(reason))}: ${count(clips.length, 'clip')}.`,
  );
  return (
    <div className="aside">
      {groups.length > 0 && (
        <p>
          <b>{BRING_IN.asideHead}</b> {words.join(' ')}{' '}
          <Toggle isOpen={open === 'aside'} onPress={() => setOpen(open === 'aside' ? null : 'aside')} />
        </p>
      )}
      {open === 'aside' && (
        <ol className="aside-list">
          {groups.flatMap(({ reason, clips }) =>
            clips.map(({ clip, takeIn }) => (
              <li key={clip.id}>
                <span>
                  <b>{clip.squad ? names.squad(clip.squad) : ''}</b> {names.clip(clip.id)},{' '}
                  {clip.time?.startMs != null && `${names.times.minute(clip.time.startMs)}, `}
                  {nameAside(reason)}
                </span>
                {takeIn && <Button onPress={() => void desk.decide(...takeIn)}>{BRING_IN.takeIn}</Button>}
              </li>
            )),
          )}
        </ol>
      )}
      {lesson.problems.length > 0 && (
        <p>
          <b>{BRING_IN.noticesHead}</b> {BRING_IN.notices(lesson.problems.length)}{' '}
          <Toggle
            isOpen={open === 'notices'}
            onPress={() => setOpen(open === 'notices' ? null : 'notices')}
          />
        </p>
      )}
      {open === 'notices' && (
        <ol className="aside-list">
          {lesson.problems.map((problem) => {
            const { what, todo } = describeProblem(problem, names);
            return (
              <li key={what}>
                {what} {todo}
              </li>
            );
          })}
        </ol>
      )}
      {hidden.length > 0 && (
        <p>
          <b>{BRING_IN.consentHead}</b> {BRING_IN.consent(hidden)}
        </p>
      )}
    </div>
  );
}

function Toggle({ isOpen, onPress }: { readonly isOpen: boolean; readonly onPress: () => void }) {
  return (
    <button type="button" className="lk" aria-expanded={isOpen} onClick={onPress}>
      {isOpen ? BRING_IN.hide : BRING_IN.look}
    </button>
  );
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
