import type { Plan, StationCode } from '../lesson/plan.ts';
import { findSaid, getHeading, type Said } from './said.ts';

/** What is said to the class before it starts; the usual cautions are added by the words on paper. */
export interface BriefingSheet {
  readonly kind: 'briefing';
  readonly heading: Said;
  readonly school: Said;
  readonly objective: Said | null;
  readonly words: readonly { readonly word: Said; readonly meaning: Said }[];
  readonly rules: readonly Said[];
  readonly boundaries: readonly Said[];
  readonly cautions: readonly Said[];
  /** Cautions of single stations. */
  readonly stationCautions: readonly { readonly place: Said; readonly caution: Said }[];
}

/** For the teacher alone: every station with a picture of it, the clue that leads there, and what must stand there. */
export interface AnswerKey {
  readonly kind: 'answer-key';
  readonly heading: Said;
  /** False: no station of the lesson has a clue, for it walks by its list. */
  readonly hasClues: boolean;
  readonly stations: readonly {
    readonly code: StationCode;
    readonly place: Said;
    readonly exercise: Said;
    readonly reps: number;
    readonly clue: Said | null;
    readonly equipment: Said | null;
    /** Null: either will do. */
    readonly setting: 'indoor' | 'outdoor' | null;
    /** Reference photo, a path below the lesson folder. It tells the place, so no card and no clue has it. */
    readonly photo: string | null;
  }[];
}

/** Stations a page of the answer key. */
const STATIONS_A_PAGE = 9;

/** The sheet that the teacher reads out, one lesson's. */
export function buildBriefingSheet(plan: Plan): BriefingSheet {
  const { briefing, stations } = plan;
  const list = (key: 'rules' | 'boundaries' | 'cautions') =>
    briefing[key].map((text, at): Said => ({ text, field: `briefing.${key}[${at}]` }));
  return {
    kind: 'briefing',
    heading: getHeading(plan),
    school: { text: plan.lesson.school, field: 'lesson.school' },
    objective: findSaid(briefing.objective, 'briefing.objective'),
    words: briefing.words.map(({ word, meaning }, at) => ({
      word: { text: word, field: `briefing.words[${at}].word` },
      meaning: { text: meaning, field: `briefing.words[${at}].meaning` },
    })),
    rules: list('rules'),
    boundaries: list('boundaries'),
    cautions: list('cautions'),
    stationCautions: stations.flatMap(({ place, caution }, at) => {
      const said = findSaid(caution, `stations[${at}].caution`);
      return said ? [{ place: { text: place, field: `stations[${at}].place` }, caution: said }] : [];
    }),
  };
}

/** The answer key, as many pages as it takes. */
export function buildAnswerKeys(plan: Plan): readonly AnswerKey[] {
  const stations = plan.stations.map(
    ({ code, reps, place, exercise, clue, equipment, setting, photo }, at) => ({
      code,
      reps,
      place: { text: place, field: `stations[${at}].place` },
      exercise: { text: exercise, field: `stations[${at}].exercise` },
      clue: findSaid(clue, `stations[${at}].clue`),
      equipment: findSaid(equipment, `stations[${at}].equipment`),
      setting: setting ?? null,
      photo: photo ?? null,
    }),
  );
  const hasClues = stations.some(({ clue }) => clue !== null);
  const keys: AnswerKey[] = [];
  for (let from = 0; from < stations.length; from += STATIONS_A_PAGE) {
    const some = stations.slice(from, from + STATIONS_A_PAGE);
    keys.push({ kind: 'answer-key', heading: getHeading(plan), hasClues, stations: some });
  }
  return keys;
}
