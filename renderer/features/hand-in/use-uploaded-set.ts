import { useEffect, useState } from 'react';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { sendFiles } from '../../client/send-files.ts';

/** The way to hand an archive over from the browser; what was sent is thrown away when another is, or the page goes. */
export function useUploadedSet(
  { client, lesson, report }: LessonDesk,
  onTaken: (token: string) => void,
): (file: File) => Promise<void> {
  const [inbox, setInbox] = useState<string | null>(null);
  useEffect(() => {
    if (inbox === null) return;
    return () => void client.request('closeInbox', { inbox });
  }, [client, inbox]);
  return async (file) => {
    const sent = await sendFiles(client, lesson, [{ path: file.name, file }]);
    if (!sent.ok) return report(sent.problems);
    setInbox(sent.value);
    onTaken(sent.value);
  };
}
