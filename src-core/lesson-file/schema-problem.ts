import type { z } from 'zod';

/** What a schema found wrong at one place, without words of its own. */
export interface SchemaProblem {
  /** Such as `stations[2].reps`; empty for the whole. */
  readonly path: string;
  /**
   * What was expected: a key of the schema itself (`local-time`), or by kind `missing`, `unknown-key`, `one-of`,
   * `at-least`, `at-most`, `at-least-items`, `at-most-items`, `at-least-characters`, `at-most-characters`, `date`,
   * `other-text`, `other`, or the type wanted: `number`, `integer`, `text`, `list`, `group`, `yes-or-no`.
   */
  readonly expected: string;
  /** The bound, the values allowed (`a, b`) or the unknown key; null where the key says all. */
  readonly detail: string | null;
}

type Issue = z.core.$ZodIssue;

const TYPE_KEYS: Readonly<Record<string, string>> = {
  number: 'number',
  int: 'integer',
  string: 'text',
  array: 'list',
  tuple: 'list',
  object: 'group',
  record: 'group',
  boolean: 'yes-or-no',
};

/** The schema's own messages are keys; zod's built-in ones are sentences. */
const OWN_KEY = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** What zod found in a value, in the order found, one problem for each unknown key. `value` is what was checked. */
export function readSchemaProblems(error: z.ZodError, value: unknown): readonly SchemaProblem[] {
  return error.issues.flatMap((issue): SchemaProblem[] => {
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({
        path: buildPath([...issue.path, key]),
        expected: 'unknown-key',
        detail: key,
      }));
    }
    const path = buildPath(issue.path);
    if (findAt(value, issue.path) === undefined) return [{ path, expected: 'missing', detail: null }];
    return [{ path, ...readIssue(issue) }];
  });
}

function readIssue(issue: Issue): Omit<SchemaProblem, 'path'> {
  if (OWN_KEY.test(issue.message)) return { expected: issue.message, detail: null };
  switch (issue.code) {
    case 'invalid_type':
      return { expected: TYPE_KEYS[issue.expected] ?? 'other', detail: null };
    case 'invalid_value':
      return { expected: 'one-of', detail: issue.values.map(String).join(', ') };
    case 'invalid_union':
      return { expected: 'one-of', detail: listOptions(issue) };
    case 'too_small':
      return { expected: `at-least${getUnit(issue.origin)}`, detail: String(issue.minimum) };
    case 'too_big':
      return { expected: `at-most${getUnit(issue.origin)}`, detail: String(issue.maximum) };
    case 'invalid_format':
      return { expected: issue.format === 'date' ? 'date' : 'other-text', detail: null };
    default:
      return { expected: 'other', detail: null };
  }
}

function listOptions(issue: object): string | null {
  return 'options' in issue && Array.isArray(issue.options) ? issue.options.map(String).join(', ') : null;
}

function getUnit(origin: string): string {
  if (origin === 'string') return '-characters';
  return origin === 'array' ? '-items' : '';
}

function findAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null && Object.hasOwn(inner, key)
        ? (inner as Record<PropertyKey, unknown>)[key]
        : undefined,
    value,
  );
}

function buildPath(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    return text === '' ? String(key) : `${text}.${String(key)}`;
  }, '');
}
