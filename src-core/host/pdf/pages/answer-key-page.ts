import { PACK_NAMES, PAPER } from '../../../../renderer/text/english/paper.ts';
import type { AnswerKey } from '../../../printing/teacher-sheets.ts';
import { type Layout, type Mark, ours, rule, text, type } from '../marks.ts';
import type { PackPhotos } from '../pack-photos.ts';
import { layOutHead, UNDER_HEAD } from './teacher-head.ts';

interface Column {
  readonly x: number;
  readonly w: number;
}

/** Where each column stands; `clue` is null in a lesson that walks by its list, and the exercise has its room. */
interface Columns {
  readonly place: Column;
  readonly exercise: Column;
  readonly clue: Column | null;
  readonly equipment: Column;
}

const WITH_CLUES: Columns = {
  place: { x: 0, w: 44 },
  exercise: { x: 47, w: 38 },
  clue: { x: 88, w: 62 },
  equipment: { x: 153, w: 37 },
};
const WITHOUT_CLUES: Columns = { ...WITH_CLUES, exercise: { x: 47, w: 103 }, clue: null };
const ROW_HEIGHT = 24;

/** Room of a picture of the place, below its name. */
const PHOTO = { w: 24, h: 13 };

/** The answer key: stations down, with the clue that leads to each and what must stand there. */
export function layOutAnswerKey({ heading, hasClues, stations }: AnswerKey, photos: PackPhotos): Layout {
  const columns = hasClues ? WITH_CLUES : WITHOUT_CLUES;
  return {
    title: PACK_NAMES.answers.title,
    marks: [
      ...layOutHead(PACK_NAMES.answers.title, heading),
      ...COLUMN_NAMES.flatMap((name): Mark[] => {
        const column = columns[name];
        const head = ours(PAPER.answersHead[name]);
        if (!column) return [];
        return [text({ ...column, y: UNDER_HEAD, h: 6 }, head, type('sans-bold', 10), { stand: 'bottom' })];
      }),
      rule(0, UNDER_HEAD + 6.6, 190, 0.5),
      ...stations.flatMap((station, at) =>
        layOutStation(station, UNDER_HEAD + 8 + at * ROW_HEIGHT, { columns, photos }),
      ),
    ],
  };
}

const COLUMN_NAMES = ['place', 'exercise', 'clue', 'equipment'] as const;

function layOutStation(
  station: AnswerKey['stations'][number],
  y: number,
  { columns, photos }: { readonly columns: Columns; readonly photos: PackPhotos },
): Mark[] {
  const h = ROW_HEIGHT - 2;
  const { place, exercise, clue, equipment } = columns;
  const clueSaid = station.clue ?? ours(PAPER.noClue);
  const photo = station.photo === null ? undefined : photos.get(station.photo);
  const where = station.setting && PAPER.setting[station.setting];
  const kit = station.equipment ?? ours(PAPER.none);
  const toSetOut = where ? { ...kit, text: PAPER.settingKit(where, station.equipment?.text ?? '') } : kit;
  const middle = { stand: 'middle' } as const;
  const exerciseSaid = { ...station.exercise, text: PAPER.answersCount(station.exercise.text, station.reps) };
  return [
    { kind: 'plate', box: { x: 0, y: y + (h - 10) / 2, w: 10, h: 10 }, letter: station.code, cutMm: 0 },
    ...layOutPhoto(photo, y),
    text(
      { x: 12.5, y, w: place.w - 12.5, h: photo ? h - PHOTO.h - 0.6 : h },
      station.place,
      type('serif', 13, 6, 1.1),
      middle,
    ),
    text({ ...exercise, y, h }, exerciseSaid, type('sans', 12, 6, 1.15), middle),
    ...(clue ? [text({ ...clue, y, h }, clueSaid, type('serif-italic', 13, 7.5, 1.15), middle)] : []),
    text({ ...equipment, y, h }, toSetOut, type('sans', 11, 6, 1.15), middle),
    rule(0, y + h + 0.8, 190, 0.15),
  ];
}

/** The whole picture, as large as its room lets it be; nothing where there is none. */
function layOutPhoto(photo: ReturnType<PackPhotos['get']>, y: number): Mark[] {
  if (!photo) return [];
  const w = Math.min(PHOTO.w, PHOTO.h * photo.aspect);
  const box = { x: 12.5, y: y + ROW_HEIGHT - 2 - PHOTO.h, w, h: w / photo.aspect };
  return [{ kind: 'picture', box, jpeg: photo.jpeg }];
}
