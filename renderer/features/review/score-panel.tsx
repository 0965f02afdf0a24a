import { type RefObject, useRef } from 'react';
import type { FlagView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { KeyCap } from '../../ui/key-cap.tsx';
import { KEY_IDS } from '../../ui/keys/key-table.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { ClipFlags } from './clip-flags.tsx';
import { CriterionRow } from './criterion-row.tsx';
import { EarnsLine } from './earns-line.tsx';
import { NoteField } from './note-field.tsx';
import type { QueueItem } from './review-queue.ts';
import { getEarnings, listCriteria } from './score-sheet.ts';
import { useFreedFocus } from './use-freed-focus.ts';

/** What the score sheet's keys and buttons do. */
export interface ScoreActs {
  readonly decide: (act: JournalAct) => void;
  readonly confirm: () => void;
  /** One answer to every criterion that has none; then on to the next clip. */
  readonly answerRest: (met: boolean) => void;
  readonly back: () => void;
}

/** The score sheet: flags, criteria, what the clip earns, the note, and Confirm. */
export function ScorePanel({
  lesson,
  item,
  flags,
  names,
  acts,
  note,
  firstOpen,
  isRefused,
}: {
  readonly lesson: LessonView;
  readonly item: QueueItem;
  readonly flags: readonly FlagView[];
  readonly names: LessonNames;
  readonly acts: ScoreActs;
  readonly note: RefObject<HTMLInputElement | null>;
  /** Takes the first criterion without an answer. */
  readonly firstOpen: RefObject<HTMLInputElement | null>;
  /** Confirming was asked for, and the first open answer stood against it. */
  readonly isRefused: boolean;
}) {
  const { clip } = item;
  const answers = useRef<HTMLOListElement>(null);
  useFreedFocus(answers, clip.id);
  const lines = listCriteria(lesson.plan, clip);
  const open = lines.findIndex(({ shown }) => shown === null);
  const earnings = getEarnings(lines, getPoints(lesson, item));
  return (
    <Sheet label={REVIEW.scoreSheet} className="score">
      <header>
        <h2>{REVIEW.scoreSheet}</h2>
        <span className="push cap">
          <CriterionCaps criteria={lines.length} /> <KeyCap id="note" /> {REVIEW.noteHint}
        </span>
      </header>
      <div className="crs">
        <ClipFlags flags={flags} names={names} onSettle={lesson.second ? null : acts.decide} />
        <ol ref={answers}>
          {lines.map((line, at) => (
            <CriterionRow
              key={line.criterion}
              line={line}
              number={at + 1}
              names={names}
              clip={clip}
              onAnswer={(met) =>
                acts.decide({ kind: 'criterion-marked', clip: clip.id, criterion: line.criterion, met })
              }
              {...(at === open && { ref: firstOpen })}
            />
          ))}
        </ol>
      </div>
      <div className="sum">
        <EarnsLine earnings={earnings} />
        <NoteField ref={note} lesson={lesson.lesson} clip={clip} onNote={acts.decide} />
        <p className="refused" role="status">
          {isRefused && lines[open] && REVIEW.answerFirst(lines[open].label)}
        </p>
        {open >= 0 && (
          <div className="rest">
            <Button onPress={() => acts.answerRest(true)} keyId="yes-to-rest">
              {REVIEW.yesToRest}
            </Button>
            <Button onPress={() => acts.answerRest(false)} keyId="no-to-rest">
              {REVIEW.noToRest}
            </Button>
          </div>
        )}
        <div className="go">
          <Button look="ink" onPress={acts.confirm} keyId="confirm">
            {earnings.isInked ? REVIEW.goOn : REVIEW.confirm}
          </Button>
          <Button label={REVIEW.back} onPress={acts.back}>
            {BACK}
          </Button>
        </div>
      </div>
    </Sheet>
  );
}

const BACK = <Glyph name="back" />;

/** The first and the last key that change an answer; only the first nine criteria have one. */
function CriterionCaps({ criteria }: { readonly criteria: number }) {
  const keys = KEY_IDS.filter((id) => id.startsWith('criterion-')).slice(0, criteria);
  const [first] = keys;
  const last = keys.at(-1);
  if (!first || !last) return null;
  return (
    <>
      <KeyCap id={first} />
      {last !== first && '–'}
      {last !== first && <KeyCap id={last} />} {REVIEW.keysHint} ·
    </>
  );
}

function getPoints(lesson: LessonView, { squad, slot, clip }: QueueItem) {
  const score = lesson.squadScores.find((one) => one.squad === squad);
  const part = score?.sum.parts.find((one) => one.code === 'slot' && one.slot === slot);
  const max = part?.code === 'slot' ? part.max : 0;
  return { points: clip.points ?? 0, max, isLost: part?.code === 'slot' && part.reason === 'order' };
}
