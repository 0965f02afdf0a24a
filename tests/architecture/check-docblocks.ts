import { MIN_DOCBLOCK_WORDS } from './rules.ts';
import { isNode, listCode, parseFile, type SourceTree, type SyntaxNode } from './source-tree.ts';

/** Every export without a docblock that says something, as `path: name`. */
export function findUndocumented(tree: SourceTree): string[] {
  return listCode(tree).flatMap(([path, text]) => {
    const parsed = parseFile(path, text);
    const docblocks = parsed.comments.filter(
      (comment) => comment.type === 'Block' && comment.value.startsWith('*'),
    );
    const isDocumented = (start: number) => {
      const above = docblocks.findLast((comment) => comment.end <= start);
      const between =
        above &&
        text
          .slice(above.end, start)
          .replace(/\/\/.*$/gm, '')
          .trim();
      return between === '' && above !== undefined && countWords(above.value) >= MIN_DOCBLOCK_WORDS;
    };
    return findExports(parsed.program.body)
      .filter((found) => !isDocumented(found.start))
      .map((found) => `${path}: ${found.name}`);
  });
}

function countWords(comment: string): number {
  return comment.match(/[\p{L}\p{N}][\p{L}\p{N}'’.-]*/gu)?.length ?? 0;
}

interface Export {
  readonly name: string;
  /** Where the docblock ends at the latest: the start of the declaration. */
  readonly start: number;
}

/** What a file exports and declares itself; re-exports are documented where they are declared. */
function findExports(body: readonly unknown[]): Export[] {
  const nodes = body.filter(isNode);
  const declared = new Map<string, number>();
  for (const node of nodes) {
    for (const name of listDeclared(node)) if (!declared.has(name)) declared.set(name, Number(node.start));
  }
  return nodes.flatMap((node): Export[] => {
    const start = Number(node.start);
    if (node.type === 'ExportDefaultDeclaration') {
      const inner = isNode(node.declaration) ? String(node.declaration.name ?? '') : '';
      return [{ name: 'default', start: declared.get(inner) ?? start }];
    }
    if (node.type !== 'ExportNamedDeclaration' || node.source !== null) return [];
    if (isNode(node.declaration)) return listDeclared(node.declaration).map((name) => ({ name, start }));
    const specifiers = Array.isArray(node.specifiers) ? node.specifiers.filter(isNode) : [];
    return specifiers.map((specifier) => {
      const name = isNode(specifier.local) ? String(specifier.local.name) : '';
      return { name, start: declared.get(name) ?? start };
    });
  });
}

/** The names that a declaration brings in: one for functions and types, one or more for variables. */
function listDeclared(node: SyntaxNode): string[] {
  if (Array.isArray(node.declarations)) {
    const names = node.declarations.filter(isNode).map((entry) => (isNode(entry.id) ? entry.id.name : null));
    return names.map((name) => String(name ?? 'pattern'));
  }
  return isNode(node.id) ? [String(node.id.name)] : [];
}
