import { Fragment, type ReactNode } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { STATIONS } from '../../text/english/plan-stations.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { listRowKeys } from './row-keys.ts';
import { StationDetails } from './station-details.tsx';
import { type RowActs, StationRow } from './station-row.tsx';

/** The stations as a table whose words are changed in place; one line at a time opens for all the rest of it. */
export function StationTable({
  plan,
  opened,
  onOpen,
  onAdd,
  acts,
  children,
}: {
  readonly plan: Plan;
  /** Code of the station that lies open; null: none. */
  readonly opened: string | null;
  readonly onOpen: (code: string | null) => void;
  readonly onAdd: () => void;
  readonly acts: RowActs;
  /** What stands below the table. */
  readonly children: ReactNode;
}) {
  const { stations } = plan;
  const keys = listRowKeys(stations.map(({ code }) => code));
  return (
    <Sheet label={STATIONS.head} className="st">
      <header className="strip-head" data-at="stations">
        <h2>{STATIONS.head}</h2>
        <span className="cap">{STATIONS.sentence(stations.length)}</span>
        <span className="push" />
        <Button onPress={onAdd}>
          <Glyph name="plus" /> {STATIONS.add}
        </Button>
      </header>
      <table className="print stt">
        <thead>
          <tr>
            <td />
            <th scope="col">{STATIONS.place}</th>
            <th scope="col">{STATIONS.exercise}</th>
            <th scope="col" className="r">
              {STATIONS.reps}
            </th>
            <th scope="col" className="care-head">
              {STATIONS.care}
            </th>
            <td />
          </tr>
        </thead>
        <tbody>
          {stations.map((station, at) => {
            const { code } = station;
            const isOpen = code === opened;
            return (
              <Fragment key={keys[at]}>
                <StationRow
                  {...{ station, at, isOpen, acts }}
                  onToggle={() => onOpen(isOpen ? null : code)}
                />
                {isOpen && (
                  <tr className="sel">
                    <td colSpan={6}>
                      <StationDetails
                        {...{ station, at }}
                        isOnly={stations.length < 2}
                        onChange={acts.onChange}
                      />
                    </td>
                  </tr>
                )}
              </Fragment>
            );
          })}
        </tbody>
      </table>
      {children}
    </Sheet>
  );
}
