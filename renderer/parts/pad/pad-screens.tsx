import { type FormEvent, useEffect, useState } from 'react';
import { type Entry, readStanding, sendCode } from '../../link/pad/entry.ts';
import { connectPad, type PadLink } from '../../link/pad/pad-link.ts';
import { Button } from '../controls/button.tsx';
import { TextField } from '../controls/field.tsx';
import { useWords, WordsProvider } from '../words/words.tsx';
import styles from './pad.module.css';
import { PadHome } from './pad-home.tsx';

interface Place {
  /** The page's own address. */
  readonly base: string;
  /** From the QR code; empty where the address was typed. */
  readonly code: string;
}

/** All of a pad's page: who is this phone, joining, and what the desk wants of it. */
export function PadScreens(place: Place) {
  return (
    <WordsProvider>
      <PadEntry {...place} />
    </WordsProvider>
  );
}

let link: PadLink | null = null;

/** One link a page load, made once the phone has joined. */
function padLink(): PadLink {
  link ??= connectPad();
  return link;
}

function PadEntry({ base, code }: Place) {
  const words = useWords().pad;
  const [entry, setEntry] = useState<Entry | null>(null);
  useEffect(() => {
    document.title = words.title;
    void readStanding(base).then(setEntry);
  }, [base, words.title]);
  if (entry === null) {
    return (
      <main className={styles.page}>
        <p role="status">{words.asking}</p>
      </main>
    );
  }
  if (entry.standing === 'joined') return <PadHome link={padLink()} />;
  if (entry.standing === 'away') {
    return (
      <main className={styles.page}>
        <h1>{words.title}</h1>
        <p role="alert">{entry.words}</p>
        <Button weight="main" large onClick={() => void readStanding(base).then(setEntry)}>
          {words.again}
        </Button>
      </main>
    );
  }
  return <JoinForm base={base} code={code} onEntry={setEntry} />;
}

function JoinForm({ base, code, onEntry }: Place & { onEntry: (entry: Entry) => void }) {
  const words = useWords().pad;
  const [typed, setTyped] = useState(code);
  const [name, setName] = useState('');
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState<string | undefined>(undefined);

  async function send(event: FormEvent): Promise<void> {
    event.preventDefault();
    setBusy(true);
    const entry = await sendCode(base, { code: typed, name });
    setBusy(false);
    if (entry.standing === 'joined') onEntry(entry);
    else setRefused(entry.words);
  }

  return (
    <main className={styles.page}>
      <h1>{words.join}</h1>
      <form className={styles.form} onSubmit={(event) => void send(event)}>
        <TextField
          label={words.code}
          hint={words.codeHint}
          error={refused}
          value={typed}
          onChange={setTyped}
          className={styles.code}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          maxLength={16}
          required
        />
        <TextField label={words.name} hint={words.nameHint} value={name} onChange={setName} maxLength={80} required />
        <Button weight="main" large type="submit" busy={busy}>
          {words.send}
        </Button>
      </form>
    </main>
  );
}
