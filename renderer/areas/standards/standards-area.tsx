import { useWords } from '../../parts/words/words.tsx';

export default function StandardsArea() {
  return <h1>{useWords().shell.areas.standards}</h1>;
}
