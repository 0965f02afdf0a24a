import type { RuleCheck } from '../../../src-core/gradebook/oneroster/bundle-slip.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { RULE_CHECKS, SET } from '../../text/english/hand-in-set.ts';
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
  const broken = rules.filter(({ slips }) => slips.length > 0);
  return (
    <details className="set-rules" open={broken.length > 0}>
      <summary>{SET.rules(rules.length - broken.length, rules.length, version)}</summary>
      <ul>
        {[...broken, ...rules.filter(({ slips }) => slips.length === 0)].map(({ rule, slips }) => (
          <li key={rule}>
            <span className={slips.length > 0 ? 'need' : ''} aria-hidden="true">
              <Glyph name={slips.length > 0 ? 'warn' : 'tick'} />
            </span>
            <span>
              {RULE_CHECKS[rule]} <code>{rule}</code>
              <span className="vh">{slips.length > 0 ? SET.broken : SET.kept}</span>
              {slips.slice(0, 3).map((slip) => (
                <span key={`${slip.file} ${slip.record} ${slip.column}`} className="need broken">
                  {describeProblem(slip, BARE_NAMES).what}
                </span>
              ))}
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
