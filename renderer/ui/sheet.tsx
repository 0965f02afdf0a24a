import type { ReactNode } from 'react';

/** A sheet of paper on the desk: a named section. */
export function Sheet({
  label,
  className = '',
  children,
}: {
  readonly label: string;
  readonly className?: string;
  readonly children: ReactNode;
}) {
  return (
    <section className={`sheet ${className}`} aria-label={label}>
      {children}
    </section>
  );
}

/** The head of a screen: its title, one sentence on what is there, its tools at the right. */
export function ScreenHead({
  title,
  sentence,
  children,
}: {
  readonly title: string;
  readonly sentence: string;
  readonly children?: ReactNode;
}) {
  return (
    <div className="head screen-head">
      <h1>{title}</h1>
      <p>{sentence}</p>
      <span className="push" />
      {children}
    </div>
  );
}
