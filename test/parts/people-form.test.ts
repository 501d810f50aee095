import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findPeople } from '../../renderer/areas/people/find-people.ts';
import { entryProblems } from '../../renderer/areas/people/person-form.ts';
import { en } from '../../renderer/parts/words/en.ts';
import { formatsFor } from '../../renderer/parts/words/formats.ts';
import { type Person, person } from '../../shared-types/people.ts';

const formats = formatsFor('en-GB');
const words = en(formats).people;

function aPerson(part: Partial<Person>): Person {
  const id = '3f0c2f5e-6d5b-4c7e-9d3b-0d9f6c1a2b3c';
  return {
    id,
    name: 'Ana',
    nickname: '',
    athlete: true,
    judge: false,
    notes: '',
    archivedAt: null,
    createdAt: 0,
    ...part,
  };
}

describe('a person’s form', () => {
  const text = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.constantFrom('', '   ', 'x'.repeat(10_000), 'x'.repeat(10_001)),
  );

  test('refuses what the schema refuses, and nobody without a role', () => {
    fc.assert(
      fc.property(text, text, text, fc.boolean(), fc.boolean(), (name, nickname, notes, athlete, judge) => {
        const entry = { name, nickname, notes, athlete, judge };
        const fits = person.safeParse(aPerson(entry)).success && (athlete || judge);
        expect(Object.keys(entryProblems(entry, words)).length === 0).toBe(fits);
      }),
    );
  });

  test('names the field', () => {
    const wrong = { name: ' ', nickname: 'n'.repeat(10_001), notes: 'n'.repeat(10_001), athlete: false, judge: false };
    expect(entryProblems(wrong, words)).toEqual({
      name: 'A name is needed.',
      nickname: 'At most 10,000 characters.',
      notes: 'At most 10,000 characters.',
      role: 'Choose athlete, judge or both.',
    });
  });
});

test('the list is by name, as the language orders it, and finds in notes', () => {
  const lines = ['Zoë', 'Émile', 'ana', 'Eve 10', 'Eve 2'].map((name, index) => ({
    person: aPerson({ id: `${index}`, name, notes: name === 'ana' ? 'left-handed' : '' }),
    setsAsAthlete: 0,
    setsAsJudge: 0,
  }));
  const names = (text: string): string[] => findPeople(lines, text, formats.compare).map((line) => line.person.name);
  expect(names('')).toEqual(['ana', 'Émile', 'Eve 2', 'Eve 10', 'Zoë']);
  expect(names('LEFT')).toEqual(['ana']);
});
