import { useEffect, useState } from 'react';
import { findField } from './find-field.ts';

/**
 * Gives the way to a field: called with a path of plan.json, the field has the focus once it is on the sheet. A field that
 * is asked for when the sheet is shown has it at once.
 */
export function useFieldFocus(asked: string | null): (path: string) => void {
  const [wanted, setWanted] = useState<{ readonly path: string } | null>(
    asked === null ? null : { path: asked },
  );
  useEffect(() => {
    if (!wanted) return;
    const field = findField(wanted.path);
    field?.scrollIntoView({ block: 'center' });
    field?.focus();
  }, [wanted]);
  return (path) => setWanted({ path });
}
