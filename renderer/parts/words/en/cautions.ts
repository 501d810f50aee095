import { generalCautions } from '../../../../shared-types/sheets/cautions.ts';

export function cautionsWords() {
  return {
    title: 'Before the first set',
    items: generalCautions,
    read: 'I have read this',
    readAgain: 'Read the cautions again',
    heading: 'Cautions',
  };
}
