import { useMemo, useState } from 'react';
import type { CallOutput } from '../../../src-core/contract/calls.ts';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import { getEnds } from '../../../src-core/marking/look-back/build-series.ts';
import { buildLookBack, type Section } from '../../../src-core/marking/look-back/look-back.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { getDays, LOOK_BACK, sayEnd } from '../../text/english/look-back.ts';
import { EveryLesson } from './every-lesson.tsx';
import { CriteriaSheet, FlagsSheet } from './lines-sheets.tsx';
import { SquadsSheet } from './squads-sheet.tsx';
import { listCriteria } from './strand-rows.ts';
import { WriteFigures } from './write-figures.tsx';

/** One class across its lessons, with the choice of class and criterion. */
export function SectionView({
  client,
  folder,
  gathered,
  sections,
}: {
  readonly client: DeskClient;
  readonly folder: string | null;
  readonly gathered: CallOutput<'readLookBack'>;
  readonly sections: readonly Section[];
}) {
  const [chosen, setChosen] = useState<string | null>(null);
  const [criterion, setCriterion] = useState<string | null>(null);
  const section = sections.find((one) => getKey(one) === chosen) ?? sections[0];
  const lookBack = useMemo(() => (section ? buildLookBack(section) : null), [section]);
  if (!lookBack || !section) return null;
  const [from, to] = getDays(lookBack).map((day) => BARE_NAMES.times.date(day));
  const ends = getEnds(section.lessons.length);
  const gone = new Set(gathered.filmsGone.map((at) => gathered.summaries[at]));
  const filmsGone = section.lessons.filter((lesson) => gone.has(lesson)).length;
  const unseen = section.lessons.filter((lesson) => lesson.unseen > 0).length;
  return (
    <>
      <p className="look-filter">
        <label>
          <span>{LOOK_BACK.ofClass}</span>
          <select
            className="field"
            value={getKey(section)}
            onChange={({ target }) => setChosen(target.value)}
          >
            {sections.map((one) => (
              <option key={getKey(one)} value={getKey(one)}>
                {LOOK_BACK.section(one.school, one.className)}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>{LOOK_BACK.ofCriterion}</span>
          <select
            className="field"
            value={criterion ?? ''}
            onChange={({ target }) => setCriterion(target.value === '' ? null : target.value)}
          >
            <option value="">{LOOK_BACK.everyCriterion}</option>
            {listCriteria(lookBack).map(({ key, label }) => (
              <option key={key} value={key}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <span className="look-span">
          <b>{LOOK_BACK.lessons(section.lessons.length)}</b>
          {section.lessons.length > 1 ? ` ${from} – ${to}` : ` ${from}`}
          {ends > 0 && `; ${LOOK_BACK.beside(sayEnd('first', ends), sayEnd('last', ends))}`}
        </span>
        <WriteFigures
          key={getKey(section)}
          {...{ client, folder }}
          school={section.school}
          className={section.className}
        />
      </p>
      <SquadsSheet lookBack={lookBack} />
      <div className="look-pair">
        <CriteriaSheet lookBack={lookBack} criterion={criterion} />
        <FlagsSheet lookBack={lookBack} />
      </div>
      <EveryLesson lookBack={lookBack} />
      <p className="read look-notes">
        {LOOK_BACK.pencilled} {LOOK_BACK.squadsNote} {filmsGone > 0 && LOOK_BACK.filmsGone(filmsGone)}{' '}
        {unseen > 0 && LOOK_BACK.unseen(unseen)}
      </p>
    </>
  );
}

function getKey({ school, className }: Section): string {
  return JSON.stringify([school, className]);
}
