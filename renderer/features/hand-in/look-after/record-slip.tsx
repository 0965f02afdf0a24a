import { useEffect, useState } from 'react';
import type { CallOutput } from '../../../../src-core/contract/calls.ts';
import type { FolderRef } from '../../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../../src-core/contract/problem.ts';
import type { Pupil } from '../../../../src-core/lesson/roster.ts';
import type { StepProps } from '../../../client/steps.ts';
import { LOOK_AFTER } from '../../../text/english/look-after.ts';
import { RECORD } from '../../../text/english/pupil-record.ts';
import { Button } from '../../../ui/button.tsx';
import { FolderButton } from '../../../ui/folder-button.tsx';
import { ProblemLines } from '../../../ui/problem-lines.tsx';
import { SlipDialog } from '../../../ui/slip-dialog.tsx';
import { useReplacing } from '../../../ui/use-replacing.ts';

type PupilRecord = CallOutput<'readPupilRecord'>;

/** Everything that is held on one pupil, to be read, written for whoever may have it, and used as a list for deleting. */
export function RecordSlip({
  pupil,
  lesson,
  desk,
  deskView,
  names,
  onClose,
}: StepProps & { readonly pupil: Pupil; readonly onClose: () => void }) {
  const [record, setRecord] = useState<PupilRecord | null>(null);
  const [into, setInto] = useState<FolderRef | null>(null);
  const [path, setPath] = useState<string | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const { isThere, note } = useReplacing(`${into?.token ?? ''}/${record?.fileName ?? ''}`);
  const { client } = desk;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another revision is another record
  useEffect(() => {
    void client.request('readPupilRecord', { lesson: desk.lesson, pupil: pupil.id }).then((reply) => {
      setProblems(reply.problems);
      if (reply.ok) setRecord(reply.value);
    });
  }, [client, desk.lesson, pupil.id, lesson.revision]);
  const write = async (replace: boolean) => {
    if (!record) return;
    const { draft, fileName } = record;
    const order = { draft, fileName, into: into?.token ?? null, replace };
    const reply = await client.request('writePupilRecord', {
      lesson: desk.lesson,
      pupil: pupil.id,
      ...order,
    });
    note(reply.problems);
    setProblems(reply.problems);
    setPath(reply.ok ? reply.value.path : null);
  };
  const choose = (folder: FolderRef) => {
    setInto(folder);
    setProblems([]);
    setPath(null);
  };
  return (
    <SlipDialog title={LOOK_AFTER.recordOf(`${pupil.given} ${pupil.family}`)} onClose={onClose}>
      <p className="cap">{RECORD.readFirst}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="raw" tabIndex={0} aria-label={LOOK_AFTER.recordText}>
        {record?.text ?? LOOK_AFTER.asking}
      </section>
      <ProblemLines problems={problems} names={names} />
      <p className="cap">{LOOK_AFTER.recordInto(into?.path ?? null, record?.fileName ?? '')}</p>
      <div className="rem">
        <Button look="ink" isDisabled={!record} onPress={() => void write(isThere)}>
          {isThere ? LOOK_AFTER.replace : LOOK_AFTER.writeRecord}
        </Button>
        <FolderButton {...{ client, deskView }} purpose="hand-in" onChoose={choose}>
          {LOOK_AFTER.otherFolder}
        </FolderButton>
      </div>
      <p role="status" className={path ? 'read' : 'vh'}>
        {path ? LOOK_AFTER.written(path) : ''}
      </p>
    </SlipDialog>
  );
}
