import type { ReactNode } from 'react';
import type { Advice } from '../text/names.ts';
import { Glyph } from './glyph.tsx';

/** Something that went wrong: what happened, what is safe, what to do; remedies as buttons, inked first. */
export function StopNote({
  title,
  advice,
  children,
}: {
  readonly title: string;
  readonly advice: readonly Advice[];
  readonly children?: ReactNode;
}) {
  return (
    <section className="stop" role="alert" aria-label={title}>
      <span className="flag loud">
        <Glyph name="warn" />
        {title}
      </span>
      <div className="read">
        {advice.map(({ what, todo }) => (
          <p key={what}>
            <b>{what}</b> {todo}
          </p>
        ))}
      </div>
      {children}
    </section>
  );
}
