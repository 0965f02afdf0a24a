import type { SecondMarkingView } from '../../../../src-core/contract/second-calls.ts';
import {
  hasCommonMarks,
  type MarkingComparison,
} from '../../../../src-core/marking/agreement/compare-markings.ts';
import type { LessonNames } from '../../../client/lesson-names.ts';
import { AGREEMENT, explainAgreement, figure, nameSubject } from '../../../text/english/agreement.ts';
import { SECOND } from '../../../text/english/second-marking.ts';
import { ProblemLines } from '../../../ui/problem-lines.tsx';
import { Sheet } from '../../../ui/sheet.tsx';

/** How far the two agree in each thing that both have marked: the figures, and a sentence on what they mean. */
export function AgreementSheet({
  marking: { who, comparison, problems },
  names,
}: {
  readonly marking: SecondMarkingView;
  readonly names: LessonNames;
}) {
  return (
    <Sheet label={SECOND.agreement} className="col pvw">
      <header className="hd">
        <h2>{AGREEMENT.title(who)}</h2>
      </header>
      <ProblemLines problems={problems} names={names} className="need pad" />
      {hasCommonMarks(comparison) ? (
        <Figures comparison={comparison} />
      ) : (
        <p className="read pad">{AGREEMENT.toTalkAbout(comparison)}</p>
      )}
    </Sheet>
  );
}

function Figures({ comparison }: { readonly comparison: MarkingComparison }) {
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="pv" tabIndex={0} aria-label={SECOND.agreement}>
        <table className="print agreement">
          <caption className="vh">{SECOND.agreement}</caption>
          <thead>
            <tr>
              {[SECOND.subject, ...AGREEMENT.heads.slice(1)].map((head) => (
                <th key={head} scope="col" className={head === SECOND.subject ? '' : 'r'}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {comparison.subjects.map(({ subject, agreement }) => (
              <tr key={nameSubject(subject)}>
                <th scope="row">
                  {nameSubject(subject)}
                  <span className="means">{explainAgreement(subject, agreement)}</span>
                </th>
                <td className="r num">{agreement.pairs}</td>
                <td className="r num">{agreement.same}</td>
                <td className="r num">
                  {agreement.share === null ? '–' : Math.round(agreement.share * 100)}
                </td>
                {[agreement.kappa, agreement.linearKappa, agreement.quadraticKappa, agreement.icc].map(
                  (value, at) => (
                    <td key={AGREEMENT.heads[at + 4]} className="r num">
                      {value === null ? SECOND.notDefined : figure(value)}
                    </td>
                  ),
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="cap pad">{SECOND.figures}</p>
    </>
  );
}
