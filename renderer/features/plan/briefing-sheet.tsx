import type { Plan } from '../../../src-core/lesson/plan.ts';
import { PAPER } from '../../text/english/paper.ts';
import { BRIEFING } from '../../text/english/plan-briefing.ts';
import { Sheet } from '../../ui/sheet.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { type BriefingList, changeObjective, changeSentence } from './plan-edits.ts';
import { TypedWord } from './typed-word.tsx';
import { WordsToLearn } from './words-to-learn.tsx';

const LISTS = ['cautions', 'rules', 'boundaries'] as const satisfies readonly BriefingList[];

/** The most sentences that a list of the briefing may have. */
const MOST = 12;

/** What is said to the class before it starts; the usual cautions are printed below the teacher's own. */
export function BriefingSheet({
  plan,
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const { briefing } = plan;
  const { objective = '' } = briefing;
  return (
    <Sheet label={BRIEFING.head} className="briefing">
      <header className="strip-head" data-at="briefing">
        <h2>{BRIEFING.head}</h2>
        <span className="cap">{BRIEFING.policy}</span>
      </header>
      <div className="briefing-lists">
        <section>
          <h3>{BRIEFING.objective}</h3>
          <TypedWord
            label={BRIEFING.objective}
            shown={objective}
            hint={BRIEFING.objectiveHint}
            at="briefing.objective"
            type="text"
            value={objective}
            isOptional
            isWide
            onDecide={(value) => onChange(changeObjective(value))}
          />
        </section>
        <WordsToLearn words={briefing.words} onChange={onChange} />
        {LISTS.map((list) => (
          <SentenceList key={list} list={list} sentences={briefing[list]} onChange={onChange} />
        ))}
      </div>
    </Sheet>
  );
}

function SentenceList({
  list,
  sentences,
  onChange,
}: {
  readonly list: BriefingList;
  readonly sentences: readonly string[];
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const { head, hint, label } = BRIEFING.lists[list];
  const rows = sentences.length < MOST ? [...sentences, ''] : sentences;
  return (
    <section>
      <h3>{head}</h3>
      <ol>
        {rows.map((sentence, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a sentence is known by its place
          <li key={at}>
            <TypedWord
              label={label(at + 1)}
              shown={sentence}
              hint={hint}
              at={`briefing.${list}[${at}]`}
              type="text"
              value={sentence}
              isOptional
              isWide
              onDecide={(value) => onChange(changeSentence(list, at, value))}
            />
          </li>
        ))}
      </ol>
      {list === 'cautions' && (
        <>
          <h4 className="cap">{BRIEFING.usual}</h4>
          <ul className="usual">
            {PAPER.usualList.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
