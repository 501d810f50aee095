import { useId, useState } from 'react';
import { Button } from '../../../parts/controls/button.tsx';
import { Dialog } from '../../../parts/controls/dialog.tsx';
import { Check, TextField } from '../../../parts/controls/field.tsx';
import { useSettings } from '../../../parts/desk/settings.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { canSpeak } from '../sound/speech.ts';
import styles from './more-panel.module.css';

export type Asking = 'menu' | 'finish' | 'abandon' | null;

interface MorePanelProps {
  readonly asking: Asking;
  readonly onAsk: (asking: Asking) => void;
  /** False in an open set, whose finish stands among the calls. */
  readonly canFinish: boolean;
  readonly onFinish: () => void;
  readonly onAbandon: (reason: string) => void;
  readonly keys: readonly { readonly name: string; readonly keys: string }[];
}

/** What is seldom needed while a set runs: sounds, keys, and the two ways to end it before its goal. */
export function MorePanel({ asking, onAsk, canFinish, onFinish, onAbandon, keys }: MorePanelProps) {
  const words = useWords().judge.live;
  const id = useId();
  const [reason, setReason] = useState('');
  const { settings, put } = useSettings();
  const close = (): void => {
    setReason('');
    onAsk(null);
  };
  return (
    <Dialog open={asking !== null} onClose={close} labelledBy={id} side={asking === 'menu'} firm={asking === 'abandon'}>
      {asking === 'menu' ? (
        <>
          <h2 id={id}>{words.menu}</h2>
          <Button onClick={close} autoFocus>
            {words.closeMenu}
          </Button>
          <div>
            <Check label={words.sounds} checked={settings.sounds} onChange={(sounds) => void put({ sounds })} />
            <Check
              label={words.spoken}
              checked={settings.spokenCounts}
              disabled={!canSpeak()}
              onChange={(spokenCounts) => void put({ spokenCounts })}
            />
          </div>
          <div className={styles.ends}>
            {canFinish ? <Button onClick={() => onAsk('finish')}>{words.finish}</Button> : null}
            <Button onClick={() => onAsk('abandon')}>{words.abandon}</Button>
          </div>
          <section className={styles.keys}>
            <h3>{words.keys}</h3>
            <dl>
              {keys.map((item) => (
                <div key={item.name}>
                  <dt>{item.name}</dt>
                  <dd>
                    <kbd>{item.keys}</kbd>
                  </dd>
                </div>
              ))}
            </dl>
            <p className={styles.hint}>{words.shiftHint}</p>
            <p className={styles.hint}>{words.keysHint}</p>
          </section>
        </>
      ) : null}
      {asking === 'finish' ? (
        <>
          <h2 id={id}>{words.finishAsk}</h2>
          <div className={styles.actions}>
            <Button onClick={close} autoFocus>
              {words.abandonNo}
            </Button>
            <Button weight="main" onClick={onFinish}>
              {words.finishYes}
            </Button>
          </div>
        </>
      ) : null}
      {asking === 'abandon' ? (
        <>
          <h2 id={id}>{words.abandonAsk}</h2>
          <p className={styles.hint}>{words.abandonHint}</p>
          <TextField label={words.abandonReason} value={reason} onChange={setReason} maxLength={500} />
          <div className={styles.actions}>
            <Button onClick={close} autoFocus>
              {words.abandonNo}
            </Button>
            <Button
              onClick={() => {
                onAbandon(reason.trim());
                close();
              }}
            >
              {words.abandonYes}
            </Button>
          </div>
        </>
      ) : null}
    </Dialog>
  );
}
