import { memo } from 'react';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { REVIEW } from '../../text/english/review.ts';
import { getFlagGlyph } from '../../ui/flag-tag.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import type { CardLine, ClassCard, Hole } from './class-card.ts';

/** The class card: stations by squads, punched as clips are inked. It is the queue: pressing a hole shows its clip. */
export const CardTable = memo(function CardTable({
  card,
  current,
  names,
  onShow,
}: {
  readonly card: ClassCard;
  readonly current: string | null;
  readonly names: LessonNames;
  readonly onShow: (clip: string) => void;
}) {
  return (
    <div className="card-scroll">
      <table className="cardt">
        <caption className="vh">{REVIEW.cardCaption}</caption>
        <Head squads={card.of.plan.squads} />
        <tbody>
          {card.lines.map((line) => (
            <Line
              key={line.station}
              line={line}
              current={line.holes.some(({ clip }) => clip === current) ? current : null}
              names={names}
              onShow={onShow}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
});

const Head = memo(function Head({ squads }: Pick<Plan, 'squads'>) {
  return (
    <thead>
      <tr>
        <td />
        {squads.map(({ code }) => (
          <th key={code} scope="col">
            <SquadMark squad={code} />
          </th>
        ))}
        <th scope="col" className="lf">
          {REVIEW.left}
        </th>
      </tr>
    </thead>
  );
});

/** One of twenty, of which a key changes two. */
const Line = memo(function Line({
  line: { station, place, holes, left },
  current,
  names,
  onShow,
}: {
  readonly line: CardLine;
  /** The clip on the desk where it is one of this line's. */
  readonly current: string | null;
  readonly names: LessonNames;
  readonly onShow: (clip: string) => void;
}) {
  return (
    <tr className={current === null ? '' : 'on'}>
      <th scope="row">
        <b>{station}</b> {place}
      </th>
      {holes.map((hole) => (
        <td key={hole.squad}>
          <Punch
            {...hole}
            who={names.squad(hole.squad)}
            isNow={hole.clip !== null && hole.clip === current}
            onShow={onShow}
          />
        </td>
      ))}
      <td className="lf">
        <span>{left === 0 ? REVIEW.noneLeft : left}</span>
      </td>
    </tr>
  );
});

const LOOKS = { inked: 'ink', pencilled: '', flagged: 'need', gone: 'gone', none: 'off' } as const;

/** Some twenty a line, of which a key changes two. */
const Punch = memo(function Punch({
  station,
  state,
  clip,
  flag,
  who,
  isNow,
  onShow,
}: Hole & {
  readonly who: string;
  readonly isNow: boolean;
  readonly onShow: (clip: string) => void;
}) {
  const label = REVIEW.hole(who, station, REVIEW.holes[isNow ? 'now' : state]);
  const look = isNow ? 'now' : LOOKS[state];
  if (clip === null) return <span className={`punch ${look}`} role="img" aria-label={label} />;
  return (
    <button
      type="button"
      className={`punch ${look}`}
      aria-label={label}
      aria-current={isNow}
      // Pressed, it would only show what is shown: Enter confirms the clip that was just chosen here.
      data-keys={isNow ? 'through' : undefined}
      onClick={() => onShow(clip)}
    >
      {!isNow && state === 'inked' && <Glyph name="tick" />}
      {!isNow && flag && <Glyph name={getFlagGlyph(flag)} />}
    </button>
  );
});
