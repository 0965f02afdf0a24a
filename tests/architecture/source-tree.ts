import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type ParseResult, parseSync } from 'oxc-parser';
import { UNTRACKED } from './rules.ts';

/** Files of a tree: path from its top, with `/`, to text. Tests build small bad ones to show that a rule bites. */
export type SourceTree = ReadonlyMap<string, string>;

/** One import or re-export of a file. */
export interface Import {
  readonly from: string;
  /** As written: `../a.ts`, `node:fs`, `zod`. */
  readonly request: string;
  /** The file it means, from the top of the tree; null for packages and Node's own modules. */
  readonly file: string | null;
  /** Erased before running. `import { type A }` is not: the bare import stays behind. */
  readonly isTypeOnly: boolean;
  /** Names of what stays after erasing, as exported by the other side; `*` for all of them. */
  readonly names: readonly string[];
}

/** The top of the repository. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const CODE = /\.(ts|tsx|mts|mjs|js)$/;

/** All text files below the named folders and files; binary kinds are left out. */
export function readTree(...folders: readonly string[]): SourceTree {
  const tree = new Map<string, string>();
  for (const folder of folders) {
    for (const path of listFiles(folder)) {
      if (/\.(png|jpg|ico|icns|woff2|mp4|mov|bin)$/.test(path)) continue;
      tree.set(path, readFileSync(join(ROOT, path), 'utf8'));
    }
  }
  return tree;
}

/** Paths of all files below a folder, from the top of the repository; a file's own path where one is named. */
export function listFiles(folder: string): string[] {
  const found = statSync(join(ROOT, folder), { throwIfNoEntry: false });
  if (!found?.isDirectory()) return found ? [folder] : [];
  const entries = readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => posix.relative(ROOT, posix.join(entry.parentPath, entry.name)))
    .filter((path) => !path.split('/').some((part) => UNTRACKED.includes(part)))
    .sort();
}

/** The files of a tree that hold code. */
export function listCode(tree: SourceTree): [path: string, text: string][] {
  return [...tree].filter(([path]) => CODE.test(path) && !path.endsWith('.d.ts'));
}

/** The parsed file; throws where it is not valid TypeScript, which is a bug of its own. */
export function parseFile(path: string, text: string): ParseResult {
  const parsed = parseSync(path, text);
  const [error] = parsed.errors;
  if (error) throw new Error(`${path}: ${error.message}`);
  return parsed;
}

/** Every import, re-export, dynamic import and `import('…')` type of a file. */
export function readImports(path: string, text: string): Import[] {
  const found: Import[] = [];
  const add = (request: string, isTypeOnly: boolean, names: readonly string[]) => {
    const file = request.startsWith('.') ? posix.join(posix.dirname(path), request) : null;
    found.push({ from: path, request, file, isTypeOnly, names });
  };
  visit(parseFile(path, text).program, (node) => {
    const source = isNode(node.source) ? node.source.value : undefined;
    if (typeof source !== 'string') return;
    if (node.type === 'ImportDeclaration') {
      add(source, node.importKind === 'type', listNames(node.specifiers));
    } else if (node.type === 'ExportNamedDeclaration') {
      add(source, node.exportKind === 'type', listNames(node.specifiers));
    } else if (node.type === 'ExportAllDeclaration') {
      add(source, node.exportKind === 'type', ['*']);
    } else if (node.type === 'ImportExpression') {
      add(source, false, ['*']);
    } else if (node.type === 'TSImportType') {
      add(source, true, ['*']);
    }
  });
  return found;
}

function listNames(specifiers: unknown): string[] {
  if (!Array.isArray(specifiers)) return [];
  const values = specifiers
    .filter(isNode)
    .filter((one) => one.importKind !== 'type' && one.exportKind !== 'type');
  return values.map((specifier) => {
    const named = specifier.imported ?? (specifier.type === 'ExportSpecifier' ? specifier.local : null);
    if (specifier.type === 'ImportDefaultSpecifier') return 'default';
    return isNode(named) ? String(named.name ?? named.value) : '*';
  });
}

/** A node of the syntax tree, seen as data. */
export interface SyntaxNode {
  readonly type: string;
  readonly [field: string]: unknown;
}

/** Whether a value found in the syntax tree is a node of it. */
export function isNode(value: unknown): value is SyntaxNode {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';
}

/** Calls `see` for a node and all below it, parents first. */
export function visit(node: unknown, see: (node: SyntaxNode) => void): void {
  if (Array.isArray(node)) {
    for (const entry of node) visit(entry, see);
    return;
  }
  if (!isNode(node)) return;
  see(node);
  for (const value of Object.values(node)) {
    if (typeof value === 'object') visit(value, see);
  }
}
