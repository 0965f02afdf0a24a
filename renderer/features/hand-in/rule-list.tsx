import type { RuleCheck } from '../../../src-core/gradebook/oneroster/bundle-fault.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { BUNDLE_RULE_WORDS } from '../../text/english/bundle-rules.ts';
import { SET } from '../../text/english/hand-in-set.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Glyph } from '../../ui/glyph.tsx';

/** Every rule of the standard by its name: kept, or broken and where. What is broken lies open. */
export function RuleList({
  rules,
  version,
}: {
  readonly rules: readonly RuleCheck[];
  readonly version: '1.1' | '1.2';
}) {
  const broken = rules.filter(({ faults }) => faults.length > 0);
  return (
    <details className="set-rules" open={broken.length > 0}>
      <summary>{SET.rules(rules.length - broken.length, rules.length, version)}</summary>
      <ul>
        {[...broken, ...rules.filter(({ faults }) => faults.length === 0)].map(({ rule, faults }) => (
          <li key={rule}>
            <span className={faults.length > 0 ? 'need' : ''} aria-hidden="true">
              <Glyph name={faults.length > 0 ? 'warn' : 'tick'} />
            </span>
            <span>
              {BUNDLE_RULE_WORDS[rule].asks} <code>{rule}</code>
              <span className="vh">{faults.length > 0 ? SET.broken : SET.kept}</span>
              {faults.slice(0, 3).map((fault) => (
                <span key={`${fault.file} ${fault.record} ${fault.column}`} className="need broken">
                  {describeProblem(fault, BARE_NAMES).what}
                </span>
              ))}
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
