import { BLANK } from '../../../src-core/lesson/find-loose-ends.ts';
import type { ShelvedExercise } from '../../../src-core/lesson/library/library.ts';
import type { Station } from '../../../src-core/lesson/plan.ts';
import { STATIONS } from '../../text/english/plan-stations.ts';
import { Glyph } from '../../ui/glyph.tsx';
import { isKey } from '../../ui/keys/use-keys.ts';
import { Plate } from '../../ui/marks.tsx';
import { ExerciseWord } from './exercise-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { RANGES } from './plan-edits.ts';
import { SentenceWord } from './sentence-word.tsx';
import { changeStation, moveStation, nameExercise, putExercise } from './station-edits.ts';
import { TypedWord } from './typed-word.tsx';

/** What the rows of one list of stations share. */
export interface RowActs {
  readonly library: readonly ShelvedExercise[];
  readonly onChange: (edit: PlanEdit) => void;
}

/** One station as a line of the table; its words are changed in place, a key moves it. */
export function StationRow({
  station,
  at,
  isOpen,
  onToggle,
  acts,
}: {
  readonly station: Station;
  /** Its place in the list, from 0. */
  readonly at: number;
  readonly isOpen: boolean;
  readonly onToggle: () => void;
  readonly acts: RowActs;
}) {
  const { code, place, exercise, reps } = station;
  const { onChange } = acts;
  const path = (field: string) => `stations[${at}].${field}`;
  return (
    <tr
      className={isOpen ? 'sel' : ''}
      data-at={`stations[${at}]`}
      onKeyDown={(event) => {
        if (isKey('station-up', event)) onChange(moveStation(code, -1));
        if (isKey('station-down', event)) onChange(moveStation(code, 1));
      }}
    >
      <td>
        <Plate letter={code} />
      </td>
      <th scope="row">
        <TypedWord
          label={STATIONS.placeOf(code)}
          shown={place === BLANK ? '' : place}
          hint={STATIONS.choosePlace}
          at={path('place')}
          type="text"
          value={place === BLANK ? '' : place}
          onDecide={(value) => onChange(changeStation(code, { place: value }))}
        />
        <small>
          <SentenceWord {...{ station, at, onChange }} field="clue" />
        </small>
      </th>
      <td>
        <ExerciseWord
          station={station}
          at={path('exercise')}
          library={acts.library}
          onTake={(chosen) => onChange(putExercise(code, chosen))}
          onOwn={(own) => onChange(nameExercise(code, own))}
        />
        {exercise !== BLANK && <small className="how">{describeCounting(station)}</small>}
      </td>
      <td className="r n">
        <TypedWord
          label={STATIONS.repsOf(code)}
          shown={String(reps)}
          at={path('reps')}
          type="number"
          range={RANGES.reps}
          value={String(reps)}
          onDecide={(value) => onChange(changeStation(code, { reps: Number(value) }))}
        />
      </td>
      <td className="care">
        <SentenceWord {...{ station, at, onChange }} field="caution" />
      </td>
      <td>
        <button type="button" className="btn bare open-row" aria-expanded={isOpen} onClick={onToggle}>
          <Glyph name={isOpen ? 'minus' : 'down'} />
          <span className="vh">{STATIONS.details(code)}</span>
        </button>
      </td>
    </tr>
  );
}

function describeCounting({ counting, cycleSeconds }: Station): string {
  const how = STATIONS.counting[counting];
  return cycleSeconds ? `${how}, ${STATIONS.tempo(...cycleSeconds)}` : how;
}
