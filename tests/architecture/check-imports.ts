import { builtinModules } from 'node:module';
import { AREAS, type Area, IMPURE_CALLS, PURE_PACKAGES, SOLE_USERS } from './rules.ts';
import {
  type Import,
  isNode,
  listCode,
  parseFile,
  readImports,
  type SourceTree,
  visit,
} from './source-tree.ts';

/** Every import that the table does not allow, as a sentence each. */
export function findBreaches(tree: SourceTree): string[] {
  return listCode(tree).flatMap(([path, text]) =>
    readImports(path, text).flatMap((entry) => {
      const reason = entry.file === null ? refuseOutside(entry) : refuseInside(entry, entry.file);
      return reason ? [`${path} imports ${entry.request}: ${reason}`] : [];
    }),
  );
}

/** The area that holds a file, and its folder with `*` filled in; null outside all areas. */
function findArea(path: string): { area: Area; place: string } | null {
  let best: { area: Area; place: string } | null = null;
  for (const area of AREAS) {
    const depth = area.folder.split('/').length;
    const place = path.split('/').slice(0, depth).join('/');
    const fits = area.folder.endsWith('/*')
      ? place.startsWith(area.folder.slice(0, -1)) && place !== path
      : place === area.folder && place !== path;
    if (fits && place.length > (best?.place.length ?? 0)) best = { area, place };
  }
  return best;
}

function refuseInside(entry: Import, file: string): string | null {
  const from = findArea(entry.from);
  const to = findArea(file);
  if (!from) return 'the importing file belongs to no area';
  if (!to) return file.startsWith('..') ? 'it lies outside the repository' : refuseTopLevel(from.area);
  if (from.place === to.place) return null;
  const { area } = from;
  if (area.values.includes(to.place)) return null;
  if (entry.isTypeOnly) {
    const isKnown = area.types.includes(to.place) || area.schemas?.includes(to.place);
    return isKnown ? null : `${area.folder} may not know the types of ${to.place}`;
  }
  const isSchema = entry.names.length > 0 && entry.names.every((name) => name.endsWith('Schema'));
  if (area.schemas?.includes(to.place)) return isSchema ? null : `of ${to.place}, schemas alone may be used`;
  return `${area.folder} may not use values of ${to.place}`;
}

/** Files at the top, such as package.json, are for the parts that run on Node. */
function refuseTopLevel(area: Area): string | null {
  return area.node ? null : 'files at the top of the repository are not for pure code';
}

function refuseOutside(entry: Import): string | null {
  const from = findArea(entry.from);
  if (!from) return 'the importing file belongs to no area';
  const { area } = from;
  if (entry.request.startsWith('node:')) return area.node ? null : `${area.folder} may not touch Node`;
  const name = getPackageName(entry.request);
  if (builtinModules.includes(name)) return 'modules of Node are written with node:';
  const soleUser = SOLE_USERS[name];
  if (soleUser && entry.from !== soleUser && area.folder !== 'tests') return `${soleUser} alone may use it`;
  return area.packages === 'any' || area.packages.includes(name) ? null : `not a package for ${area.folder}`;
}

function getPackageName(request: string): string {
  return request
    .split('/')
    .slice(0, request.startsWith('@') ? 2 : 1)
    .join('/');
}

/** Every import cycle, types included, each once: `a.ts → b.ts → a.ts`. */
export function findCycles(tree: SourceTree): string[] {
  const imports = new Map(
    listCode(tree).map(([path, text]) => [
      path,
      readImports(path, text).flatMap((entry) => (entry.file && tree.has(entry.file) ? [entry.file] : [])),
    ]),
  );
  const cycles: string[] = [];
  const done = new Set<string>();
  const walk = (path: string, trail: readonly string[]): void => {
    const met = trail.indexOf(path);
    if (met >= 0) cycles.push([...trail.slice(met), path].join(' → '));
    if (met >= 0 || done.has(path)) return;
    for (const next of imports.get(path) ?? []) walk(next, [...trail, path]);
    done.add(path);
  };
  for (const path of imports.keys()) walk(path, []);
  return cycles;
}

/** Every use of a clock, chance or the outside in a pure area, as a sentence each. */
export function findImpurities(tree: SourceTree): string[] {
  const found: string[] = [];
  for (const [path, text] of listCode(tree)) {
    const area = findArea(path)?.area;
    if (area?.packages !== PURE_PACKAGES || area.folder.startsWith('renderer')) continue;
    visit(parseFile(path, text).program, (node) => {
      const name = readUse(node);
      if (name) found.push(`${path} uses ${name}`);
    });
  }
  return found;
}

function readUse(node: { type: string; [field: string]: unknown }): string | null {
  if (node.type === 'NewExpression' && isNode(node.callee) && node.callee.name === 'Date') {
    return Array.isArray(node.arguments) && node.arguments.length === 0 ? 'new Date()' : null;
  }
  if (node.type === 'CallExpression' && isNode(node.callee) && node.callee.type === 'Identifier') {
    const name = String(node.callee.name);
    return IMPURE_CALLS.includes(name) ? name : null;
  }
  if (node.type !== 'MemberExpression' || !isNode(node.object) || !isNode(node.property)) return null;
  const object = String(node.object.name ?? '');
  const member = `${object}.${String(node.property.name ?? '')}`;
  return [object, member].find((name) => IMPURE_CALLS.includes(name)) ?? null;
}
