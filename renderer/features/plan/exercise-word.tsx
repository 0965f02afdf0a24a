import { useState } from 'react';
import { ComboBox, Input, ListBox, ListBoxItem, Popover, Text } from 'react-aria-components';
import type { Station } from '../../../src-core/lesson/plan.ts';
import { STATIONS } from '../../text/english/plan-stations.ts';
import { findExercises, type LibraryChoice } from './find-exercises.ts';
import { BLANK } from './station-edits.ts';
import { type CloseWord, Word } from './word.tsx';

interface ExerciseProps {
  readonly station: Station;
  readonly at: string;
  readonly library: readonly LibraryChoice[];
  /** Takes an exercise of the library over, with all that it says. */
  readonly onTake: (code: string) => void;
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
      items={found}
      onChange={(key) => {
        if (key === null) return;
        close(true);
        onTake(String(key));
      }}
      onBlur={() => {
        const words = text.trim();
        close(false);
        if (words !== '' && words !== station.exercise) onOwn(words);
      }}
    >
      <Input
        // biome-ignore lint/a11y/noAutofocus: the field takes the place of the word that was pressed
        autoFocus
        placeholder={station.exercise === BLANK ? STATIONS.chooseExercise : station.exercise}
        onKeyDown={(event) => {
          if (event.key === 'Escape') close(true);
          const isChosen = event.currentTarget.getAttribute('aria-activedescendant');
          if (event.key === 'Enter' && !isChosen) own();
        }}
      />
      <Popover className="choices library" placement="bottom start" offset={2}>
        <ListBox<LibraryChoice>>
          {({ code, name, line }) => (
            <ListBoxItem id={code} textValue={name}>
              <Text slot="label">{name}</Text>
              <Text slot="description">{line}</Text>
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
