import { useState } from 'react';
import type { StepProps } from '../../../client/steps.ts';
import { ARCHIVE } from '../../../text/english/archive.ts';
import { LOOK_AFTER } from '../../../text/english/look-after.ts';
import { Button } from '../../../ui/button.tsx';
import { KeepCopy } from '../../../ui/keep-copy.tsx';
import { Sheet } from '../../../ui/sheet.tsx';

/** The way to one archive of the whole lesson. */
export function BackUpSheet({ desk, deskView, lesson }: StepProps) {
  const [isOpen, setOpen] = useState(false);
  const path = deskView?.lessons.find((one) => one.lesson === desk.lesson)?.path;
  return (
    <Sheet label={LOOK_AFTER.backUp} className="col">
      <header className="hd">
        <h2>{LOOK_AFTER.backUp}</h2>
      </header>
      {isOpen && path !== undefined ? (
        <KeepCopy
          client={desk.client}
          desk={deskView}
          original={{ lesson: desk.lesson, title: lesson.plan.lesson.title, path }}
          onClose={() => setOpen(false)}
        />
      ) : (
        <div className="pad">
          <p className="read">{ARCHIVE.keepText}</p>
          <div className="rem">
            <Button isDisabled={path === undefined} onPress={() => setOpen(true)}>
              {LOOK_AFTER.backUpNow}
            </Button>
          </div>
        </div>
      )}
    </Sheet>
  );
}
