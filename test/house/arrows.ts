// The one-way arrows between the folders, read from the syntax tree of every source file: a type import is an import.
//
//   renderer -> shared-types        main/hosts -> main/desk -> (main/ledger, main/analysis) -> shared-types
//
// A package is at home in the layers named here and nowhere else; one that is not named may be imported nowhere.

import { builtinModules } from 'node:module';
import path from 'node:path';
import { findReferences } from './references.ts';
import { sourceFiles } from './sources.ts';
import { root } from './tools.ts';

/** Which other layers a layer may import; a layer may always import itself. */
const arrows: Readonly<Record<string, readonly string[]>> = {
  'shared-types': [],
  'main/analysis': ['shared-types'],
  'main/ledger': ['shared-types'],
  'main/desk': ['main/ledger', 'main/analysis', 'shared-types'],
  'main/hosts': ['main/desk', 'shared-types'],
  'renderer/link': ['shared-types'],
  'renderer/parts': ['renderer/link', 'shared-types'],
  'renderer/areas': ['renderer/parts', 'renderer/link', 'shared-types'],
  renderer: ['renderer/areas', 'renderer/parts', 'renderer/link', 'shared-types'],
};

const everyRenderer = ['renderer', 'renderer/areas', 'renderer/parts', 'renderer/link'];
const drawing = ['renderer', 'renderer/areas', 'renderer/parts'];

/** Where each package may be imported; a name that ends in `/` stands for all packages of that scope. */
const homes: Readonly<Record<string, readonly string[]>> = {
  zod: Object.keys(arrows),
  '@orpc/contract': ['shared-types', 'main/desk', 'renderer/link'],
  '@orpc/server': ['main/desk', 'main/hosts'],
  '@orpc/client': ['renderer/link', 'main/desk'],
  kysely: ['main/ledger'],
  'better-sqlite3': ['main/ledger'],
  electron: ['main/hosts'],
  ws: ['main/hosts'],
  open: ['main/hosts'],
  vite: ['main/hosts'],
  papaparse: ['main/desk'],
  'ml-matrix': ['main/analysis'],
  highs: ['main/analysis'],
  '@stdlib/': ['main/analysis'],
  react: everyRenderer,
  'react-dom': drawing,
  wouter: drawing,
  'd3-scale': drawing,
  'd3-shape': drawing,
  // Three dimensions are loaded in Train the eye only.
  three: ['renderer/areas'],
  idb: ['renderer/link'],
  '@fontsource-variable/': ['renderer', 'renderer/parts'],
};

/** Node's own modules, by the layers that may import them. The first list is for what opens sockets or starts programs. */
const outward = new Set('child_process cluster dgram dns http http2 https inspector net tls'.split(' '));
const outwardHomes = ['main/hosts'];
const nodeHomes = ['main/hosts', 'main/desk', 'main/ledger'];

/** Configuration of a tool, which runs in that tool and belongs to no layer. */
const toolFiles = new Set(['renderer/vite.config.ts']);

/** The layer of a file named from the top folder with forward slashes; undefined where it belongs to none. */
function layerOf(file: string): string | undefined {
  const layers = Object.keys(arrows).toSorted((a, b) => b.length - a.length);
  return layers.find((layer) => file.startsWith(`${layer}/`));
}

function areaOf(file: string): string | undefined {
  return /^renderer\/areas\/([^/]+)\//.exec(file)?.[1];
}

function packageOf(specifier: string): string {
  const [first = '', second = ''] = specifier.split('/');
  return first.startsWith('@') ? `${first}/${second}` : first;
}

function homesOf(specifier: string): readonly string[] | undefined {
  const builtin = specifier.replace(/^node:/, '');
  if (specifier.startsWith('node:') || builtinModules.includes(builtin)) {
    return outward.has(builtin.split('/')[0] ?? '') ? outwardHomes : nodeHomes;
  }
  const name = packageOf(specifier);
  return homes[name] ?? homes[`${name.split('/')[0]}/`];
}

/** Why this file may not refer to this module, in words; undefined where it may. */
function objection(file: string, layer: string, specifier: string): string | undefined {
  if (!specifier.startsWith('.')) {
    const allowed = homesOf(specifier);
    if (allowed === undefined) return `${specifier} has no home: say in test/house/arrows.ts where it may be imported`;
    return allowed.includes(layer) ? undefined : `${layer} may not import ${specifier}: only ${allowed.join(', ')} may`;
  }
  const target = path.posix.join(path.posix.dirname(file), specifier.replace(/\?.*$/, ''));
  const targetLayer = layerOf(target);
  if (targetLayer === undefined) return `${layer} may not import ${target}, which is in no layer`;
  if (targetLayer !== layer && !arrows[layer]?.includes(targetLayer)) {
    return `${layer} may not import ${targetLayer} (${target})`;
  }
  if (layer === 'renderer/areas' && targetLayer === layer && areaOf(file) !== areaOf(target)) {
    return `the area ${areaOf(file)} may not import the area ${areaOf(target)} (${target})`;
  }
  return undefined;
}

/**
 * Every import against the arrows below a top folder, as `file:line: why`. A source file that belongs to no layer and an
 * import whose name is only known at run time are findings too. Throws where there is no source file at all.
 */
export function findForbiddenArrows(top: string = root): string[] {
  const files = sourceFiles(top, ['main', 'renderer', 'shared-types']).filter((file) => !toolFiles.has(file));
  if (files.length === 0) throw new Error(`no source files below ${top}`);
  return files.flatMap((file) => {
    const layer = layerOf(file);
    if (layer === undefined) return [`${file}:1: belongs to no layer`];
    return findReferences(path.join(top, file)).flatMap(({ specifier, line }) => {
      const why = specifier === undefined ? 'imports a name known only at run time' : objection(file, layer, specifier);
      return why === undefined ? [] : [`${file}:${line}: ${why}`];
    });
  });
}
