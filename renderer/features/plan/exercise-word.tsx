import { useState } from 'react';
import { ComboBox, Input, ListBox, ListBoxItem, Popover, Text } from 'react-aria-components';
import { BLANK } from '../../../src-core/lesson/find-loose-ends.ts';
import type { ShelvedExercise } from '../../../src-core/lesson/library/library.ts';
import type { Station } from '../../../src-core/lesson/plan.ts';
import { STATIONS } from '../../text/english/plan-stations.ts';
import { findExercises } from './find-exercises.ts';
import { type CloseWord, Word } from './word.tsx';

interface ExerciseProps {
  readonly station: Station;
  readonly at: string;
  readonly library: readonly ShelvedExercise[];
  /** Takes an exercise of the library over, with all that it says. */
  readonly onTake: (exercise: ShelvedExercise) => void;
  /** An exercise in the teacher's own words. */
  readonly onOwn: (exercise: string) => void;
}

/** The exercise of a station: found in the library by typing, or in the teacher's own words. */
export function ExerciseWord(props: ExerciseProps) {
  const { exercise, code } = props.station;
  return (
    <Word
      label={STATIONS.exerciseOf(code)}
      shown={exercise === BLANK ? '' : exercise}
      hint={STATIONS.chooseExercise}
      at={props.at}
      edit={(close) => <ExerciseField {...props} close={close} />}
    />
  );
}

function ExerciseField({
  station,
  library,
  onTake,
  onOwn,
  close,
}: ExerciseProps & { readonly close: CloseWord }) {
  const [text, setText] = useState('');
  const found = findExercises(library, text);
  const own = () => {
    const words = text.trim();
    close(true);
    if (words !== '' && words !== station.exercise) onOwn(words);
  };
  return (
    <ComboBox
      className="exercise-field"
      aria-label={STATIONS.exerciseOf(station.code)}
      allowsCustomValue
      menuTrigger="focus"
      inputValue={text}
      onInputChange={setText}
      items={found.map((each) => ({ ...each, id: each.code }))}
      onChange={(key) => {
        const chosen = library.find(({ code }) => code === key);
        if (!chosen) return;
        close(true);
        onTake(chosen);
      }}
      onBlur={() => {
        const words = text.trim();
        close(false);
        if (words !== '' && words !== station.exercise) onOwn(words);
      }}
    >
      <Input
        autoFocus
        placeholder={station.exercise === BLANK ? STATIONS.chooseExercise : station.exercise}
        onKeyDown={(event) => {
          if (event.key === 'Escape') close(true);
          const isChosen = event.currentTarget.getAttribute('aria-activedescendant');
          if (event.key !== 'Enter' || isChosen) return;
          event.preventDefault();
          own();
        }}
      />
      <Popover className="choices library" placement="bottom start" offset={2}>
        <ListBox<ShelvedExercise>>
          {(exercise) => (
            <ListBoxItem id={exercise.code} textValue={exercise.name}>
              <Text slot="label">{exercise.name}</Text>
              <Text slot="description">{STATIONS.exerciseLine(exercise)}</Text>
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
