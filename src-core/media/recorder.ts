/** Names of what recorded a file, gathered while it is read: the first statement of each wins. */
export interface RecorderDraft {
  brand: string;
  make: string;
  model: string;
  software: string;
  android: boolean;
}

/** A draft with nothing known yet. */
export function startRecorder(): RecorderDraft {
  return { brand: '', make: '', model: '', software: '', android: false };
}

/** Notes a name where none is noted yet; empty names say nothing. */
export function noteRecorder(
  recorder: RecorderDraft,
  field: 'make' | 'model' | 'software' | 'brand',
  name: string,
): void {
  if (recorder[field] === '') recorder[field] = name.slice(0, 200);
}
