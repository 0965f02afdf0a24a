import { useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import { BARE_NAMES } from '../../client/lesson-names.ts';
import { LOOK_BACK } from '../../text/english/look-back.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import { useReplacing } from '../../ui/use-replacing.ts';

/** Writes the section's figures as CSV; a file that is there is replaced by a second press alone. */
export function WriteFigures({
  client,
  folder,
  school,
  className,
}: {
  readonly client: DeskClient;
  readonly folder: string | null;
  readonly school: string;
  readonly className: string;
}) {
  const [written, setWritten] = useState<string | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const { isThere, note } = useReplacing(JSON.stringify([folder, school, className]));
  const write = async () => {
    const reply = await client.request('writeFigures', { folder, school, className, replace: isThere });
    note(reply.problems);
    setWritten(reply.ok ? reply.value.path : null);
    setProblem(reply.ok ? null : (reply.problems[0] ?? null));
  };
  return (
    <span className="look-write">
      <Button onPress={() => void write()}>{isThere ? LOOK_BACK.replace : LOOK_BACK.write}</Button>
      <span role="status">
        {written !== null && LOOK_BACK.written(written)}
        {problem && describeProblem(problem, BARE_NAMES).what}
      </span>
    </span>
  );
}
