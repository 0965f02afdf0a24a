import './score-side.css';
import './scores.css';
import { useMemo, useState } from 'react';
import { getFlagStep, isOpen } from '../../client/flag-step.ts';
import type { StepProps } from '../../client/steps.ts';
import { useDraft } from '../../storage/use-draft.ts';
import { SCORES } from '../../text/english/scores.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { Button } from '../../ui/button.tsx';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { Pick } from '../../ui/pick.tsx';
import { ScreenHead, Sheet } from '../../ui/sheet.tsx';
import { FullToRest } from './full-to-rest.tsx';
import { ScoreSheetTable } from './score-sheet-table.tsx';
import { ScoreSide, type Slip } from './score-side.tsx';
import { buildScoreTable, countPencilled } from './score-table.ts';
import { findSelected, type Selection } from './selection.ts';

const FIGURES = (['points', 'percent', 'scale'] as const).map((value) => ({
  value,
  name: SCORES.figures[value],
}));

/** Scores: squads with their boxes, opening to pupils; the order rules side by side; every sum explained. */
export function Scores({ lesson, desk, names, go }: StepProps) {
  const { squadScores, pupilScores, flags, clips, reading } = lesson;
  const rows = useMemo(
    () => buildScoreTable({ squadScores, pupilScores, flags, clips, reading }),
    [squadScores, pupilScores, flags, clips, reading],
  );
  // The first squad lies open with its sum, so that nobody has to guess what opening shows.
  const first = rows[0]?.squad;
  const [open, setOpen] = useState<ReadonlySet<string>>(() => new Set(first === undefined ? [] : [first]));
  const [chosen, setSelection] = useState<Selection | null>(null);
  const selection: Selection | null =
    chosen ?? (first === undefined ? null : { kind: 'squad', squad: first });
  const [slip, setSlip] = useState<Slip>(null);
  const draft = useDraft(`scores-figure:${lesson.lesson}`);
  const figure = FIGURES.find(({ value }) => value === draft.text)?.value ?? 'points';
  const selected = findSelected(rows, selection);
  const setSquadOpen = (squad: string, isToBeOpen: boolean) => {
    if (open.has(squad) === isToBeOpen) return false;
    setOpen(new Set(isToBeOpen ? [...open, squad] : [...open].filter((one) => one !== squad)));
    return true;
  };
  useScoreTableKeys({
    turn: (isToBeOpen) => selected !== null && setSquadOpen(selected.row.squad, isToBeOpen),
    adjust: () => selected !== null && setSlip('adjust'),
    goToFlag: () => {
      const first = flags.find(isOpen);
      return first ? go(getFlagStep(first.flag.code), first.key) : false;
    },
  });
  if (rows.length === 0 || clips.length === 0) return <NoScores goToBringIn={() => go('bring-in')} />;
  const acts = {
    select: setSelection,
    toggle: (squad: string) => setSquadOpen(squad, !open.has(squad)),
    adjust: (which: Selection) => {
      setSelection(which);
      setSlip('adjust');
    },
    decide: desk.decide,
    show: (clip: string) => go('review', clip),
  };
  return (
    <>
      <ScreenHead
        title={STEP_NAMES.scores}
        sentence={SCORES.sentence(pupilScores.length, countPencilled(rows))}
      >
        <Pick label={SCORES.figure} choices={FIGURES} value={figure} onChange={draft.write} />
        <FullToRest lesson={lesson} desk={desk} />
        <Button onPress={() => setSlip('cut-points')}>{SCORES.cutPoints}</Button>
      </ScreenHead>
      <ScoreSheetTable {...{ lesson, rows, names, open, figure, selection, acts }} />
      <ScoreSide {...{ lesson, desk, names, rows, selected, slip, setSlip }} />
    </>
  );
}

function useScoreTableKeys(does: {
  readonly turn: (isToBeOpen: boolean) => boolean;
  readonly adjust: () => unknown;
  readonly goToFlag: () => unknown;
}): void {
  useKeys({
    'open-squad': () => does.turn(true),
    'close-squad': () => does.turn(false),
    adjust: does.adjust,
    why: () => document.getElementById('sum')?.focus(),
    'next-flag': does.goToFlag,
  });
}

function NoScores({ goToBringIn }: { readonly goToBringIn: () => void }) {
  return (
    <Sheet label={SCORES.emptyTitle} className="blank-scores">
      <h1>{SCORES.emptyTitle}</h1>
      <p className="read">{SCORES.empty}</p>
      <Button look="ink" onPress={goToBringIn}>
        {SCORES.toBringIn}
      </Button>
    </Sheet>
  );
}
