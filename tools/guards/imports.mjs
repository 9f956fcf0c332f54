// Every import is declared; arrows between our packages point one way; nobody reaches past a package's front door.
import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { at } from '../run/root.mjs';
import { filesBelow, isTest, workspaceOf } from './sources.mjs';

/** A package may import those of a lower level only. */
const LEVEL = {
  quantity: 0,
  geometry: 1,
  survey: 2,
  magnets: 2,
  packing: 2,
  costing: 2,
  photo: 3,
  files: 3,
  design: 4,
  drawing: 5,
  render: 6,
  contract: 7,
  web: 8,
  server: 8,
  cli: 8,
};

const { devDependencies } = JSON.parse(readFileSync(at('package.json'), 'utf8'));
const IMPORT =
  /(?:^|[;\s])(?:import|export)\s+(?:type\s+)?(?:[\w*{}\s,$]+?\s+from\s+)?['"]([^'"\n]+)['"]|\bimport\(\s*['"]([^'"\n]+)['"]\s*\)/g;

export function importsOf(text) {
  const plain = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
  return [...plain.matchAll(IMPORT)].map((match) => match[1] ?? match[2]);
}

const packageName = (specifier) =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');

function relativeProblem(path, workspace, specifier) {
  const target = posix.normalize(posix.join(posix.dirname(path), specifier));
  if (!workspace || target.startsWith(`${workspace.folder}/`)) {
    if (!/\.(ts|tsx|css|json|mjs|svg)(\?\w+)?$/.test(specifier)) return 'names a file without its extension';
    return undefined;
  }
  if (workspace.name === '@panewright/contract' && /^demo\/[\w.-]+\.json$/.test(target)) return undefined;
  return isTest(path) && /^(demo|docs|tests|tools)\//.test(target)
    ? undefined
    : 'reaches into another folder: import the package';
}

function ownProblem(path, workspace, specifier) {
  if (specifier.split('/').length > 2) return 'is a deep import: only the front door is public';
  if (!workspace || isTest(path)) return undefined;
  const [from, to] = [workspace.name, specifier].map((name) => name.replace('@panewright/', ''));
  if (LEVEL[from] === undefined || LEVEL[to] === undefined) return 'is of no known level';
  if (workspace.kind === 'apps' && to !== 'contract')
    return 'is not for an app: apps import the contract alone';
  return LEVEL[to] < LEVEL[from] ? undefined : 'points upward or sideways';
}

function problem(path, workspace, specifier) {
  if (specifier.startsWith('.')) return relativeProblem(path, workspace, specifier);
  const test = isTest(path);
  if (specifier.startsWith('node:'))
    return test || workspace?.kind === 'apps' ? undefined : 'is for apps and tests alone';
  const name = packageName(specifier);
  const declared =
    (workspace?.dependencies ?? []).includes(name) ||
    ((test || !workspace) && name in devDependencies) ||
    (test && name.startsWith('@panewright/') && (!workspace || name === workspace.name)) ||
    (/^(vite\/client|virtual:)/.test(specifier) && workspace?.name === '@panewright/web');
  if (!declared) return 'is not declared in its package.json';
  return name.startsWith('@panewright/') ? ownProblem(path, workspace, specifier) : undefined;
}

const SOURCES = () => filesBelow(['packages', 'apps', 'tests', 'bench'], /\.tsx?$/);

/** What is wrong with the imports of `files`: of all of them, where not told. */
export function guardImports(files = SOURCES()) {
  const problems = [];
  for (const file of files) {
    const workspace = workspaceOf(file.path);
    for (const specifier of importsOf(file.text())) {
      const why = problem(file.path, workspace, specifier);
      if (why) problems.push(`${file.path}: “${specifier}” ${why}`);
    }
  }
  return problems;
}
