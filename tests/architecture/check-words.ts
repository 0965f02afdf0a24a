import { isNode, listCode, parseFile, type SourceTree, visit } from './source-tree.ts';

/** Attributes whose text a teacher sees or hears. */
const SPOKEN = ['aria-label', 'aria-description', 'title', 'alt', 'placeholder', 'label'];

/** Words for the teacher that stand in a component instead of in the catalogue, as `path: words`. */
export function findLooseWords(tree: SourceTree): string[] {
  return listCode(tree).flatMap(([path, text]) => {
    const found: string[] = [];
    const add = (words: unknown) => {
      if (typeof words === 'string' && /\p{L}{2,}/u.test(words)) found.push(`${path}: ${words.trim()}`);
    };
    visit(parseFile(path, text).program, (node) => {
      for (const child of Array.isArray(node.children) ? node.children.filter(isNode) : []) {
        if (child.type === 'JSXText') add(child.value);
        else readLiterals(child).forEach(add);
      }
      if (node.type !== 'JSXAttribute' || !isNode(node.name) || !isNode(node.value)) return;
      if (SPOKEN.includes(String(node.name.name))) readLiterals(node.value).forEach(add);
    });
    return found;
  });
}

/** The texts of a literal, of a template, or of either side of a choice; in braces within an attribute too. */
function readLiterals(node: unknown): readonly unknown[] {
  if (!isNode(node)) return [];
  switch (node.type) {
    case 'Literal':
      return [node.value];
    case 'JSXExpressionContainer':
      return readLiterals(node.expression);
    case 'TemplateLiteral':
      return (Array.isArray(node.quasis) ? node.quasis : []).map(
        ({ value }: { readonly value: { readonly cooked: string } }) => value.cooked,
      );
    case 'ConditionalExpression':
      return [...readLiterals(node.consequent), ...readLiterals(node.alternate)];
    case 'LogicalExpression':
      return readLiterals(node.right);
    default:
      return [];
  }
}
