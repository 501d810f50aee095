import { useWords } from '../../parts/words/words.tsx';

export default function PeopleArea() {
  return <h1>{useWords().shell.areas.people}</h1>;
}
