import { SECOND } from '../text/english/second-marking.ts';
import { Button } from '../ui/button.tsx';

/** Over a second marking: whose it is, and the way back to the lesson itself. */
export function SecondStrip({ who, onBack }: { readonly who: string; readonly onBack: () => void }) {
  return (
    <aside className="second-strip" aria-label={SECOND.page}>
      <p>{SECOND.strip(who)}</p>
      <Button onPress={onBack}>{SECOND.back}</Button>
    </aside>
  );
}
