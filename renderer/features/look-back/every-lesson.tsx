import type { LookBack } from '../../../src-core/marking/look-back/look-back.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { LOOK_BACK, type Measure, sayFigure } from '../../text/english/look-back.ts';
import { listCriteria } from './strand-rows.ts';

const MEASURES: readonly Measure[] = ['points', 'repsShort', 'unison', 'flags'];

/** The plots of the class as numbers: a row a lesson, newest first. Folded until it is wanted. */
export function EveryLesson({ lookBack }: { readonly lookBack: LookBack }) {
  const { section, whole } = lookBack;
  const criteria = listCriteria(lookBack);
  const lessons = section.lessons.map((lesson, at) => ({ ...lesson.lesson, at })).toReversed();
  return (
    <details className="sheet every-lesson">
      <summary>{LOOK_BACK.everyLesson}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="scroll" tabIndex={0} aria-label={LOOK_BACK.everyLesson}>
        <table>
          <thead>
            <tr>
              <th scope="col">{LOOK_BACK.day}</th>
              <th scope="col">{LOOK_BACK.lesson}</th>
              {MEASURES.map((measure) => (
                <th key={measure} scope="col">
                  {LOOK_BACK.measures[measure]}
                </th>
              ))}
              {criteria.map(({ key, label }) => (
                <th key={key} scope="col">
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lessons.map(({ at, date, start, title }) => (
              <tr key={at}>
                <th scope="row">
                  {BARE_NAMES.times.date(date)} {start}
                </th>
                <td>{title}</td>
                {MEASURES.map((measure) => (
                  <td key={measure}>{sayFigure(whole[measure].points[at]?.value ?? null, measure)}</td>
                ))}
                {criteria.map(({ key, get }) => (
                  <td key={key}>{sayFigure(get(whole)?.points[at]?.value ?? null, 'criterion')}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
