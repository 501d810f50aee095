// House rules that no other tool checks: files stay short, and nothing is skipped or silenced without words.

import { globSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { lineAt, readSource, type Source, type SyntaxNode, walk } from './references.ts';
import { sourceFiles } from './sources.ts';
import { root } from './tools.ts';

const longestFile = 400;
const folders = ['main', 'renderer', 'shared-types', 'test'];

/** Comments that silence the compiler or a linter; each needs its reason in the same comment. */
const silencers = [
  /^\s*@ts-(?:ignore|expect-error|nocheck)\b(?<reason>.*)$/s,
  /^\s*(?:oxlint|eslint)-disable.*?(?:--(?<reason>.*))?$/s,
  /^\s*biome-ignore\S*\s+\S+?:(?<reason>.*)$/s,
];
const fewestWords = 3;

function wordCount(reason: string): number {
  return reason.split(/\s+/).filter((word) => /[a-z]{2}/i.test(word)).length;
}

function silencedWithoutWords({ comments, text }: Source): string[] {
  return comments.flatMap(({ value, start }) => {
    const match = silencers.map((pattern) => pattern.exec(value)).find((found) => found !== null);
    if (!match || wordCount(match.groups?.reason ?? '') >= fewestWords) return [];
    return [`${lineAt(text, start)}: silences a check without saying why`];
  });
}

function nameOf(node: unknown): string {
  const field = typeof node === 'object' && node !== null && 'name' in node ? node.name : '';
  return typeof field === 'string' ? field : '';
}

/** The dotted name of a call's target: `test.skip` of `test.skip.each([])('…')` too. */
function calleeName(node: unknown): string {
  if (typeof node !== 'object' || node === null || !('type' in node)) return '';
  if (node.type === 'MemberExpression' && 'object' in node && 'property' in node) {
    return `${calleeName(node.object)}.${nameOf(node.property)}`;
  }
  if (node.type === 'CallExpression' && 'callee' in node) return calleeName(node.callee);
  return nameOf(node);
}

/** Whether the last argument is a sentence: text with a space in it. */
function endsInWords(node: SyntaxNode): boolean {
  const last: unknown = Array.isArray(node.arguments) ? node.arguments.at(-1) : undefined;
  if (typeof last !== 'object' || last === null || !('type' in last)) return false;
  if (last.type === 'TemplateLiteral') return true;
  return 'value' in last && typeof last.value === 'string' && last.value.includes(' ');
}

/** Tests left out: only the test context's own `skip` with words is allowed, since that alone prints them. */
function leftOutTests({ program, text }: Source): string[] {
  const found: string[] = [];
  const starters =
    /^(?:test|it|describe|suite|bench)\.(?:\w+\.)*(?:only|skip|todo|skipIf|runIf)\b|^(?:x(?:it|test|describe)|f(?:it|describe))$/;
  walk(program, (node) => {
    if (node.type !== 'CallExpression') return;
    const name = calleeName(node.callee);
    if (starters.test(name)) found.push(`${lineAt(text, node.start)}: ${name} leaves tests out of the run`);
    else if (/\.skip$/.test(name) && !endsInWords(node)) {
      found.push(`${lineAt(text, node.start)}: ${name} skips a test without words`);
    }
  });
  return [...new Set(found)];
}

function tooLong(top: string, file: string): string[] {
  const lines = readFileSync(path.join(top, file), 'utf8').trimEnd().split('\n').length;
  return lines > longestFile ? [`${file}:${lines}: longer than ${longestFile} lines`] : [];
}

/** Every breach of the house rules below a top folder, as `file:line: what`. Throws where there is no source file. */
export function findBrokenHabits(top: string = root): string[] {
  const files = sourceFiles(top, folders);
  if (files.length === 0) throw new Error(`no source files below ${top}`);
  const sheets = globSync(
    folders.map((folder) => `${folder}/**/*.{css,html}`),
    { cwd: top },
  );
  const problems = [...files, ...sheets].flatMap((file) => tooLong(top, file));
  for (const file of files) {
    const source = readSource(path.join(top, file));
    const isTest = file.startsWith('test/');
    const lines = [...silencedWithoutWords(source), ...(isTest ? leftOutTests(source) : [])];
    problems.push(...lines.map((line) => `${file}:${line}`));
  }
  return problems;
}
