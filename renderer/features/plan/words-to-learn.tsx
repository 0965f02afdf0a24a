import { useState } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { BRIEFING } from '../../text/english/plan-briefing.ts';
import type { PlanEdit } from './plan-edit.ts';
import { changeWord } from './plan-edits.ts';
import { TypedWord } from './typed-word.tsx';

type WordToLearn = Plan['briefing']['words'][number];

/** The most words that one briefing may teach. */
const MOST = 12;

/** Words to learn with their meanings; a new one is kept here until it has both. */
export function WordsToLearn({
  words,
  onChange,
}: {
  readonly words: readonly WordToLearn[];
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const [begun, setBegun] = useState('');
  const rows = words.length < MOST ? [...words, { word: begun, meaning: '' }] : words;
  const decide = (at: number, { word, meaning }: WordToLearn) => {
    const isNew = at === words.length;
    if (isNew) setBegun(meaning === '' ? word : '');
    if (word !== '' && meaning !== '') onChange(changeWord(at, { word, meaning }));
    else if (!isNew) onChange(changeWord(at, null));
  };
  return (
    <section>
      <h3>{BRIEFING.words}</h3>
      <ol>
        {rows.map(({ word, meaning }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a word is known by its place
          <li key={at}>
            <TypedWord
              label={BRIEFING.wordLabel(at + 1)}
              shown={word}
              hint={BRIEFING.wordHint}
              at={`briefing.words[${at}].word`}
              type="text"
              value={word}
              isOptional
              onDecide={(value) => decide(at, { word: value, meaning })}
            />
            {word !== '' && (
              <>
                {': '}
                <TypedWord
                  label={BRIEFING.meaningLabel(word)}
                  shown={meaning}
                  hint={BRIEFING.meaningHint}
                  at={`briefing.words[${at}].meaning`}
                  type="text"
                  value={meaning}
                  isOptional
                  onDecide={(value) => decide(at, { word, meaning: value })}
                />
              </>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
