/** What this machine keeps in the page under a name; empty where nothing is, or it cannot be read. */
export function readRecord(place: string): Readonly<Record<string, unknown>> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(place) ?? '{}');
    return typeof kept === 'object' && kept !== null ? { ...kept } : {};
  } catch {
    return {};
  }
}

/** Keeps a record for the next start; a page without storage forgets it, and nothing else depends on it. */
export function keepRecord(place: string, record: object): void {
  try {
    localStorage.setItem(place, JSON.stringify(record));
  } catch {
    // Refused or full.
  }
}
