import { useState } from 'react';
import { Button } from '../controls/button.tsx';
import { Segmented } from '../controls/segmented.tsx';
import { useSettings } from '../desk/settings.tsx';
import { useCall } from '../desk/use-call.ts';
import { Cross } from '../look/signs.tsx';
import { useAnnounce } from '../shell/announcer.tsx';
import { useNotices } from '../shell/notices.tsx';
import { useWords } from '../words/words.tsx';
import { type Action, calls, deeds, faultAction } from './actions.ts';
import { bind, heldKeys, isBindable, isInitialOf, keyMap, unbind } from './bindings.ts';
import { KeyCap } from './key-cap.tsx';
import styles from './keys.module.css';
import { useKeyLabels } from './use-key-labels.ts';
import { useKeyPress } from './use-key-press.ts';

interface Line {
  readonly action: Action;
  readonly name: string;
}

/** Shows what each key does while judging, and binds another by pressing it. */
export function KeyEditor() {
  const words = useWords().keys;
  const announce = useAnnounce();
  const { tell } = useNotices();
  const { settings, put } = useSettings();
  const label = useKeyLabels();
  const sheets = useCall('sheets', (client, signal) => client.standards.list(undefined, { signal }), {
    topics: ['standards'],
  });
  const [sheetId, setSheetId] = useState<string | null>(null);
  const [waiting, setWaiting] = useState<Action | null>(null);
  const [refused, setRefused] = useState(false);
  const sheet = sheets.data?.find((item) => item.id === sheetId) ?? sheets.data?.[0];
  const faults = sheet?.faults ?? [];
  const initials = faults.map((fault) => fault.initial);
  const own = settings.keys;

  const ordinary: readonly Line[] = [...calls, ...deeds].map((action) => ({ action, name: words.actions[action] }));
  const ofFaults: readonly Line[] = faults.flatMap((fault, index) => {
    const action = faultAction(index);
    return action === null ? [] : [{ action, name: fault.name }];
  });
  const lines = [...ordinary, ...ofFaults];
  const nameOf = (action: Action): string => lines.find((line) => line.action === action)?.name ?? action;

  useKeyPress(waiting !== null, (code) => {
    if (waiting === null || code === 'Escape') return setWaiting(null);
    if (!isBindable(code)) return setRefused(true);
    const loser = keyMap(own, initials).get(code);
    void put({ keys: bind(own, waiting, code, initials) });
    setWaiting(null);
    announce(words.bound(label(code), nameOf(waiting)));
    if (loser !== undefined && loser !== waiting) tell(words.takenFrom(label(code), nameOf(loser)));
  });

  const row = ({ action, name }: Line) => {
    const keys = heldKeys(action, own, initials);
    return (
      <li key={action} className={styles.row}>
        <span className={styles.action}>{name}</span>
        <span className={styles.keys}>
          {keys.length === 0 ? <span className={styles.none}>{words.noKey}</span> : null}
          {keys.map((code) =>
            isInitialOf(action, code, initials) ? (
              <KeyCap key={code}>{label(code)}</KeyCap>
            ) : (
              <button
                key={code}
                type="button"
                className={styles.bound}
                aria-label={words.removeKey(label(code), name)}
                title={words.removeKey(label(code), name)}
                onClick={() => void put({ keys: unbind(own, action, code, initials) })}
              >
                <KeyCap>{label(code)}</KeyCap>
                <Cross />
              </button>
            ),
          )}
        </span>
        <Button
          weight="quiet"
          aria-label={words.addKeyTo(name)}
          aria-pressed={waiting === action}
          onClick={() => {
            setRefused(false);
            setWaiting(action);
          }}
        >
          {waiting === action ? words.pressNow : words.addKey}
        </Button>
        {waiting === action ? (
          <p className={styles.waiting} role="status">
            {refused ? words.notThatKey : words.pressHint}
          </p>
        ) : null}
      </li>
    );
  };

  return (
    <div className={styles.editor}>
      <p className={styles.about}>{words.about}</p>
      <ul className={styles.rows}>{ordinary.map(row)}</ul>
      {sheet === undefined ? null : (
        <Segmented
          label={words.faultsOf}
          value={sheet.id}
          options={(sheets.data ?? []).map((item) => ({ value: item.id, label: item.station }))}
          onChange={setSheetId}
        />
      )}
      <ul className={styles.rows}>{ofFaults.map(row)}</ul>
      <div>
        <Button
          onClick={() => {
            const before = own;
            void put({ keys: {} });
            tell(words.defaultsDone, { undo: () => void put({ keys: before }) });
          }}
        >
          {words.defaults}
        </Button>
      </div>
    </div>
  );
}
