/** The words after `export --to`: kinds in which marks leave the desk. */
export const EXPORT_WORDS = ['csv', 'xlsx', 'pdf', 'oneroster', 'oneroster-1.1'] as const;

/** A word after `export --to`. */
export type ExportWord = (typeof EXPORT_WORDS)[number];
