// What a source file refers to, in every form the language has for it.

import { readFileSync } from 'node:fs';
import { parseSync } from 'oxc-parser';

export interface Reference {
  /** The module's name as written; undefined where it is not a plain string. */
  readonly specifier: string | undefined;
  /** From 1. */
  readonly line: number;
}

/** A node of the syntax tree (ESTree with TypeScript's additions) as far as it is read here. */
export interface SyntaxNode {
  readonly type: string;
  readonly start: number;
  readonly [field: string]: unknown;
}

function isNode(value: unknown): value is SyntaxNode {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';
}

/** Calls `visit` for a node and everything below it. */
export function walk(node: SyntaxNode, visit: (node: SyntaxNode) => void): void {
  visit(node);
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) walk(child, visit);
  }
}

export interface Source {
  readonly text: string;
  readonly program: SyntaxNode;
  readonly comments: readonly { readonly value: string; readonly start: number }[];
}

/** Parses a file; throws with the parser's words where it does not parse. */
export function readSource(file: string): Source {
  const text = readFileSync(file, 'utf8');
  const { program, comments, errors } = parseSync(file, text);
  const [error] = errors;
  if (error !== undefined) throw new Error(`${file}: ${error.message}`);
  if (!isNode(program)) throw new Error(`${file}: no syntax tree`);
  return { text, program, comments };
}

export function lineAt(text: string, offset: number): number {
  return text.slice(0, offset).split('\n').length;
}

function textOf(value: unknown): string | undefined {
  if (!isNode(value)) return undefined;
  if (value.type === 'TSLiteralType') return textOf(value.literal);
  if (value.type === 'Literal' && typeof value.value === 'string') return value.value;
  return undefined;
}

function isIdentifier(value: unknown, name: string): boolean {
  return isNode(value) && value.type === 'Identifier' && value.name === name;
}

function firstArgument(node: SyntaxNode): unknown {
  return Array.isArray(node.arguments) ? node.arguments[0] : undefined;
}

/** The part of a node that names another module; undefined where the node refers to none. */
function moduleName(node: SyntaxNode): { name: unknown } | undefined {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'ImportExpression':
    case 'TSImportType':
      return { name: node.source ?? node.argument };
    case 'ExportNamedDeclaration':
      return node.source ? { name: node.source } : undefined;
    case 'TSExternalModuleReference':
      return { name: node.expression };
    case 'CallExpression': {
      const callee = node.callee;
      const isRequire = isIdentifier(callee, 'require');
      const isResolve = isNode(callee) && callee.type === 'MemberExpression' && isIdentifier(callee.object, 'require');
      return isRequire || isResolve ? { name: firstArgument(node) } : undefined;
    }
    default:
      return undefined;
  }
}

/** `new URL('./other.ts', import.meta.url)`, the way a worker is named; only source files count, not addresses. */
function urlOfSource(node: SyntaxNode): string | undefined {
  if (node.type !== 'NewExpression' || !isIdentifier(node.callee, 'URL')) return undefined;
  const name = textOf(firstArgument(node));
  return name !== undefined && /^\.{1,2}\/.*\.(ts|tsx|mts|cts|js|mjs|cjs)$/.test(name) ? name : undefined;
}

/**
 * Every module that a file refers to: imports and re-exports, of values and of types, `import()` of both kinds,
 * `require`, a worker's URL, and reference comments. Throws where the file does not parse.
 */
export function findReferences(file: string): Reference[] {
  const { text, program, comments } = readSource(file);
  const found: Reference[] = [];
  walk(program, (node) => {
    const named = moduleName(node);
    const line = lineAt(text, node.start);
    if (named !== undefined) found.push({ specifier: textOf(named.name), line });
    const url = urlOfSource(node);
    if (url !== undefined) found.push({ specifier: url, line });
  });
  for (const comment of comments) {
    const reference = /^\/\s*<reference\s+(?:types|path)\s*=\s*["']([^"']+)["']/.exec(comment.value)?.[1];
    if (reference !== undefined) found.push({ specifier: reference, line: lineAt(text, comment.start) });
  }
  return found;
}
