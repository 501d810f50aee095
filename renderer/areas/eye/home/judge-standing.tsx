import { LinkButton } from '../../../parts/controls/button.tsx';
import { Card } from '../../../parts/controls/card.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { useCall } from '../../../parts/desk/use-call.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { DrillRows } from '../list/drill-rows.tsx';
import { useVerdictText } from '../ready/use-verdict-text.ts';
import styles from './judge-standing.module.css';

const latestShown = 5;

/** How a judge stands for a station, and their latest drills. */
export function JudgeStanding({ judge, sheet }: { judge: string; sheet: string | null }) {
  const words = useWords().eye;
  const verdictText = useVerdictText();
  const standing = useCall(`eye standing ${judge} ${sheet}`, async (client, signal) => {
    const [lines, latest] = await Promise.all([
      client.drills.ready({}, { signal }),
      client.drills.list({ filter: { judge, practice: 'with' }, after: null, limit: latestShown }, { signal }),
    ]);
    return { line: lines.find((line) => line.judge.id === judge && line.sheet.id === sheet) ?? null, latest };
  });
  return (
    <Loaded reading={standing}>
      {({ line, latest }) => (
        <>
          <Card title={words.home.ready}>
            {line === null ? (
              <p>{words.ready.short.none}</p>
            ) : (
              <>
                <p className={styles.state} data-ready={line.ready}>
                  {line.ready ? words.ready.short.ready : words.ready.short.notReady}
                </p>
                <ul className={styles.faults}>
                  {line.faults.map((fault) => (
                    <li key={fault.code}>
                      <span>{fault.name}</span>
                      <span className={styles.soft}>{verdictText(fault.verdict)}</span>
                    </li>
                  ))}
                </ul>
                <div>
                  <LinkButton href={`/judge/${judge}/${line.sheet.id}`}>{words.home.history}</LinkButton>
                </div>
              </>
            )}
          </Card>
          <section className={styles.latest} aria-label={words.home.latest}>
            <h2>{words.home.latest}</h2>
            {latest.lines.length === 0 ? <p>{words.home.noDrills}</p> : <DrillRows lines={latest.lines} />}
          </section>
        </>
      )}
    </Loaded>
  );
}
