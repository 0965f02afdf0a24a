import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { ROUTES } from '../../text/english/plan-routes.ts';
import { Glyph } from '../../ui/glyph.tsx';
import { ChoiceWord } from './choice-word.tsx';
import { DistanceTable } from './distance-table.tsx';
import { ForbiddenLegs } from './forbidden-legs.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { changeStart, toggleLeftOut } from './route-edits.ts';
import { TagWord } from './tag-word.tsx';

/** What the rotation is to keep to: starts, stations left out, legs that nobody walks, distances. Folded away. */
export function RouteWishes({
  plan,
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const { stations, squads, rotation } = plan;
  const choices = stations.map(({ code, place }) => [code, `${code} ${place}`] as const);
  return (
    <Disclosure className="wishes">
      <Heading level={3}>
        <Button slot="trigger" className="btn bare">
          <Glyph name="down" /> {ROUTES.wishes}
        </Button>
      </Heading>
      <DisclosurePanel>
        <h4 className="cap">{ROUTES.starts}</h4>
        <ul className="starts">
          {squads.map(({ code, name }) => {
            const at = rotation.fixedStarts.findIndex(({ squad }) => squad === code);
            const fixed = rotation.fixedStarts[at]?.station ?? null;
            return (
              <li key={code}>
                {name}{' '}
                <ChoiceWord
                  label={ROUTES.startOf(name)}
                  shown={fixed ?? ''}
                  hint={ROUTES.anywhere}
                  {...(at >= 0 && { at: `rotation.fixedStarts[${at}]` })}
                  choices={[['', ROUTES.anywhere] as const, ...choices]}
                  value={fixed ?? ''}
                  onChoose={(station) => onChange(changeStart(code, station === '' ? null : station))}
                />
              </li>
            );
          })}
        </ul>
        <p>
          {ROUTES.leftOut[0]}{' '}
          <TagWord
            label={ROUTES.leftOutLabel}
            shown={ROUTES.list(rotation.leftOut)}
            hint={ROUTES.noneLeftOut}
            tags={choices}
            chosen={rotation.leftOut}
            onToggle={(station) => onChange(toggleLeftOut(station))}
          />{' '}
          {ROUTES.leftOut[1]}
        </p>
        <ForbiddenLegs {...{ rotation, choices, onChange }} />
        <DistanceTable plan={plan} onChange={onChange} />
      </DisclosurePanel>
    </Disclosure>
  );
}
