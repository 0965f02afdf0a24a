import type { Squad } from '../../../src-core/lesson/plan.ts';
import { SQUADS } from '../../text/english/plan-squads.ts';
import { TypedWord } from './typed-word.tsx';

type Pinnie = Squad['pinnie'];

/** A pinnie of the school's own: what it is called, and its colour. */
export function OwnPinnie({
  name,
  pinnie,
  at,
  onDecide,
}: {
  /** Of the squad. */
  readonly name: string;
  readonly pinnie: Pinnie;
  /** The squad's place in the plan, from 0. */
  readonly at: number;
  readonly onDecide: (pinnie: Pinnie) => void;
}) {
  const { colour } = pinnie;
  // The page's `change` comes once the colour is chosen; React's comes with each shade on the way there.
  const listen = (input: HTMLInputElement | null) => {
    const take = () => input && input.value !== colour && onDecide({ ...pinnie, colour: input.value });
    input?.addEventListener('change', take);
    return () => input?.removeEventListener('change', take);
  };
  return (
    <>
      <TypedWord
        label={SQUADS.pinnieNameOf(name)}
        shown={pinnie.name}
        at={`squads[${at}].pinnie.name`}
        type="text"
        value={pinnie.name}
        onDecide={(word) => onDecide({ ...pinnie, name: word })}
      />
      <input
        key={colour}
        ref={listen}
        type="color"
        className="pinnie-colour"
        aria-label={SQUADS.pinnieColourOf(name)}
        data-at={`squads[${at}].pinnie.colour`}
        defaultValue={colour.toLowerCase()}
      />
    </>
  );
}
