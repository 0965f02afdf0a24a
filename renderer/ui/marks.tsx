/** A station's letter, cut out of ink; `pencilled` where the machine proposes it, `open` on a route. */
export function Plate({ letter, look }: { readonly letter: string; readonly look?: 'open' | 'pencilled' }) {
  return <span className={`plate ${look ?? ''}`}>{letter}</span>;
}

/** How sure a proposal is: five strokes, tall ones held, and the figure. `share` is 0 to 1. */
export function Sure({ share, words }: { readonly share: number; readonly words: string }) {
  const held = Math.max(0, Math.min(5, Math.round(share * 5)));
  return (
    <span className="sure">
      <i style={{ '--n': held } as React.CSSProperties} />
      {words}
    </span>
  );
}

/** How far a piece of work has come, as a ruled bar; `share` is 0 to 1. The words beside it say the same. */
export function Bar({ share, label }: { readonly share: number; readonly label: string }) {
  const percent = Math.round(Math.max(0, Math.min(1, share)) * 100);
  return (
    <div
      className="bar"
      role="progressbar"
      aria-label={label}
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={percent}
    >
      <i style={{ width: `${percent}%` }} />
    </div>
  );
}
