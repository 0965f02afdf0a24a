import type { Consent, Pupil } from '../../../../src-core/lesson/roster.ts';
import { LOOK_AFTER } from '../../../text/english/look-after.ts';
import { Button } from '../../../ui/button.tsx';
import { SquadMark } from '../../../ui/squads.tsx';

const CONSENTS = ['given', 'withheld'] as const satisfies readonly Consent[];

/** One pupil: what is noted, to be noted otherwise, and the way to the record. */
export function PupilRow({
  pupil,
  onNote,
  onRecord,
}: {
  readonly pupil: Pupil;
  readonly onNote: (words: { consent?: Consent | null; stills?: boolean }) => Promise<void>;
  readonly onRecord: () => void;
}) {
  const { given, family, squad, consent, stills } = pupil;
  const name = `${given} ${family}`;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        <SquadMark squad={squad} />
      </td>
      <td>
        <select
          className="field"
          aria-label={LOOK_AFTER.consentOf(name)}
          value={consent ?? ''}
          onChange={({ currentTarget }) =>
            void onNote({ consent: CONSENTS.find((one) => one === currentTarget.value) ?? null })
          }
        >
          <option value="">{LOOK_AFTER.consents.none}</option>
          {CONSENTS.map((one) => (
            <option key={one} value={one}>
              {LOOK_AFTER.consents[one]}
            </option>
          ))}
        </select>
      </td>
      <td>
        <select
          className="field"
          aria-label={LOOK_AFTER.stillsOf(name)}
          value={stills ? 'yes' : 'no'}
          disabled={consent === 'withheld'}
          onChange={({ currentTarget }) => void onNote({ stills: currentTarget.value === 'yes' })}
        >
          <option value="yes">{LOOK_AFTER.stills.yes}</option>
          <option value="no">{LOOK_AFTER.stills.no}</option>
        </select>
      </td>
      <td>
        <Button look="bare" label={LOOK_AFTER.recordLabel(name)} onPress={onRecord}>
          {LOOK_AFTER.record}
        </Button>
      </td>
    </tr>
  );
}
