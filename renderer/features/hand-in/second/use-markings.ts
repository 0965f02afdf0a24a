import { useEffect, useState } from 'react';
import type { SecondMarkingView } from '../../../../src-core/contract/second-calls.ts';
import type { LessonDesk } from '../../../client/lesson-desk.ts';

/** The second markings of the lesson as it stands in `revision`; null: they are being asked for. */
export function useMarkings(
  { client, lesson, report }: LessonDesk,
  revision: number,
): readonly SecondMarkingView[] | null {
  const [markings, setMarkings] = useState<readonly SecondMarkingView[] | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another revision is another comparison
  useEffect(() => {
    let isWanted = true;
    void client.request('compareMarkings', { lesson }).then((reply) => {
      if (!isWanted) return;
      if (reply.ok) setMarkings(reply.value.markings);
      else report(reply.problems);
    });
    return () => {
      isWanted = false;
    };
  }, [client, lesson, revision]);
  return markings;
}
