import { useEffect, useState } from 'react';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { DeskView } from '../../src-core/contract/desk-view.ts';

/** The desk, read anew whenever the chooser of lessons is come to: lessons were opened meanwhile. Null: not known yet. */
export function useFreshDesk(client: DeskClient, isChoosing: boolean) {
  const state = useState<DeskView | null>(null);
  const [, setDesk] = state;
  useEffect(() => {
    if (!isChoosing) return;
    void client.request('readDesk', {}).then((reply) => reply.ok && setDesk(reply.value));
  }, [client, isChoosing]);
  return state;
}
