import { useWords } from '../words/words.tsx';

export function SettingsScreen() {
  return <h1>{useWords().shell.areas.settings}</h1>;
}
