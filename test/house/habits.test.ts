import { describe, expect, test } from 'vitest';
import { findBrokenHabits } from './habits.ts';
import { plant } from './plant.ts';

function findingsIn(file: string, text: string): string[] {
  return findBrokenHabits(plant({ 'main/desk/first.ts': 'export {};\n', [file]: text }));
}

test('an empty folder is not taken for a clean one', () => {
  expect(() => findBrokenHabits(plant({ 'README.md': '' }))).toThrow('no source files');
});

describe('length', () => {
  test.each([['main/desk/long.ts'], ['renderer/areas/judge/long.tsx'], ['test/long.test.ts'], ['renderer/long.css']])(
    '%s: 400 lines pass, 401 do not',
    (file) => {
      expect(findingsIn(file, '\n'.repeat(399).concat('/* */\n'))).toEqual([]);
      expect(findingsIn(file, '\n'.repeat(400).concat('/* */\n'))).toEqual([`${file}:401: longer than 400 lines`]);
    },
  );
});

describe('tests left out', () => {
  test.each([
    [`test.skip('a thing', () => {});`],
    [`it.skip('a thing', () => {});`],
    [`describe.skip('things', () => {});`],
    [`test.only('a thing', () => {});`],
    [`test.todo('a thing');`],
    [`test.skipIf(process.platform === 'win32')('a thing', () => {});`],
    [`test.runIf(process.env.CI)('a thing', () => {});`],
    [`test.concurrent.skip('a thing', () => {});`],
    [`test.skip.each([[1]])('a thing %i', () => {});`],
    [`xit('a thing', () => {});`],
    [`fdescribe('things', () => {});`],
    [`test('a thing', (context) => context.skip());`],
    [`test('a thing', (context) => context.skip(true));`],
  ])('%s is found', (text) => {
    expect(findingsIn('test/desk/thing.test.ts', text)).toHaveLength(1);
  });

  test.each([
    [`test('a thing', (context) => context.skip(noBinary, 'the Electron binary is not installed here'));`],
    [`test('a thing', ({ skip }) => { use(skip); });`],
    [`const rest = list.skip;`],
  ])('%s passes', (text) => {
    expect(findingsIn('test/desk/thing.test.ts', text)).toEqual([]);
  });
});

describe('silenced checks', () => {
  test.each([
    ['// @ts-expect-error\nexport {};'],
    ['// @ts-ignore: TODO\nexport {};'],
    ['// @ts-nocheck\nexport {};'],
    ['// oxlint-disable-next-line no-console\nexport {};'],
    ['/* eslint-disable */\nexport {};'],
    ['// biome-ignore lint/suspicious/noExplicitAny: needed\nexport {};'],
  ])('%s is found', (text) => {
    expect(findingsIn('main/desk/thing.ts', text)).toEqual([
      'main/desk/thing.ts:1: silences a check without saying why',
    ]);
  });

  test.each([
    ['// @ts-expect-error the wrong kind is the point of this test\nexport {};'],
    ['// oxlint-disable-next-line no-console -- the command line is this file’s screen\nexport {};'],
    ['// biome-ignore lint/style/noNonNullAssertion: the loop above filled every place\nexport {};'],
  ])('%s passes', (text) => {
    expect(findingsIn('main/desk/thing.ts', text)).toEqual([]);
  });
});
