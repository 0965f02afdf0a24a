import { useState } from 'react';
import type { StepProps } from '../../../client/steps.ts';
import { LOOK_AFTER } from '../../../text/english/look-after.ts';
import { Sheet } from '../../../ui/sheet.tsx';
import { PupilRow } from './pupil-row.tsx';
import { RecordSlip } from './record-slip.tsx';

/** The class: consent and the do-not-film word of each pupil, and everything that is held on them. */
export function PupilsSheet(step: StepProps) {
  const { lesson, desk } = step;
  const [shown, setShown] = useState<string | null>(null);
  const pupil = lesson.pupils.find(({ id }) => id === shown);
  const unnoted = lesson.pupils.filter(({ consent }) => consent === undefined).length;
  const hidden = lesson.pupils.filter(({ stills }) => !stills).length;
  return (
    <Sheet label={LOOK_AFTER.pupils} className="col">
      <header className="hd">
        <h2>{LOOK_AFTER.pupils}</h2>
        <span className="cap">{LOOK_AFTER.pupilCounts(lesson.pupils.length, unnoted, hidden)}</span>
      </header>
      {pupil && <RecordSlip key={pupil.id} pupil={pupil} onClose={() => setShown(null)} {...step} />}
      <p className="cap pad">{LOOK_AFTER.noReasons}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="pv" tabIndex={0} aria-label={LOOK_AFTER.pupils}>
        <table className="print">
          <caption className="vh">{LOOK_AFTER.pupils}</caption>
          <thead>
            <tr>
              {LOOK_AFTER.pupilHeads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lesson.pupils.map((one) => (
              <PupilRow
                key={one.id}
                pupil={one}
                onNote={async (words) => {
                  const reply = await desk.ask('noteConsent', { pupil: one.id, ...words });
                  if (!reply.ok) desk.report(reply.problems);
                }}
                onRecord={() => setShown(one.id)}
              />
            ))}
          </tbody>
        </table>
      </section>
    </Sheet>
  );
}
