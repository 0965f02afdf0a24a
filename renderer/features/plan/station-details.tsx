import type { ReactNode } from 'react';
import type { Station } from '../../../src-core/lesson/plan.ts';
import { STATIONS } from '../../text/english/plan-stations.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { SentenceWord } from './sentence-word.tsx';
import { changeOptional, changeStation, moveStation, recodeStation, removeStation } from './station-edits.ts';
import { TempoWords } from './tempo-words.tsx';
import { TypedWord } from './typed-word.tsx';

const COUNTINGS = Object.entries(STATIONS.counting) as readonly (readonly [Station['counting'], string])[];

type Setting = keyof typeof STATIONS.setting;

const SETTINGS = Object.entries(STATIONS.setting) as readonly (readonly [Setting, string])[];

/** Fields that are a sentence each, in the order in which a station is set up. */
const SENTENCES = [
  'countsAs',
  'easier',
  'harder',
  'equipment',
  'transit',
  'demonstration',
  'photo',
] as const satisfies readonly (keyof typeof STATIONS.fields)[];

/** All of a station that its line has no room for. */
export function StationDetails({
  station,
  at,
  isOnly,
  onChange,
}: {
  readonly station: Station;
  readonly at: number;
  /** The last station cannot be taken away. */
  readonly isOnly: boolean;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const { code, counting, setting = 'either' } = station;
  const path = (field: string) => `stations[${at}].${field}`;
  return (
    <div className="details">
      <dl>
        <Field name={STATIONS.countingLabel}>
          <ChoiceWord
            label={STATIONS.countingLabel}
            shown={STATIONS.counting[counting]}
            at={path('counting')}
            choices={COUNTINGS}
            value={counting}
            onChoose={(value) => onChange(changeStation(code, { counting: value }))}
          />
        </Field>
        <Field name={STATIONS.tempoLabel}>
          <TempoWords station={station} at={path('cycleSeconds')} onChange={onChange} />
        </Field>
        {SENTENCES.map((field) => (
          <Field key={field} name={STATIONS.fields[field].label}>
            <SentenceWord {...{ station, field, at, onChange }} isWide />
          </Field>
        ))}
        <Field name={STATIONS.settingLabel}>
          <ChoiceWord
            label={STATIONS.settingLabel}
            shown={STATIONS.setting[setting]}
            at={path('setting')}
            choices={SETTINGS}
            value={setting}
            onChoose={(value) => onChange(changeOptional(code, 'setting', value === 'either' ? null : value))}
          />
        </Field>
        <Field name={STATIONS.letter}>
          <TypedWord
            label={STATIONS.letter}
            shown={code}
            at={path('code')}
            type="text"
            value={code}
            onDecide={(value) => onChange(recodeStation(code, value.toUpperCase()))}
          />
        </Field>
      </dl>
      <div className="rem">
        <Button onPress={() => onChange(moveStation(code, -1))}>{STATIONS.up}</Button>
        <Button onPress={() => onChange(moveStation(code, 1))}>{STATIONS.down}</Button>
        <span className="pen">{STATIONS.moveKeys}</span>
        <span className="push" />
        <Button isDisabled={isOnly} onPress={() => onChange(removeStation(code))}>
          <Glyph name="minus" /> {STATIONS.remove(code)}
        </Button>
      </div>
    </div>
  );
}

function Field({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
