import { useWords } from '../words/words.tsx';

export function NotFound() {
  const words = useWords().shell;
  return (
    <section>
      <h1>{words.notFound}</h1>
    </section>
  );
}
