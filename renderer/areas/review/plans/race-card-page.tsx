import type { RaceCard, RacePlan } from '../../../../shared-types/contract/review/plans.ts';
import { CautionsList } from '../../../parts/cautions/cautions.tsx';
import { Table } from '../../../parts/controls/table.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { ForecastWords } from './forecast-figure.tsx';
import styles from './race-card-page.module.css';

const mostCues = 4;

/** The page itself: target and plan, own cues, what no-reps will cost, the day, cautions. */
export function RaceCardPage({ card, goal }: { card: RaceCard; goal: string }) {
  const words = useWords().review;
  const common = useWords().common;
  const texts = words.plans.card;
  const { seconds } = useFormats();
  const cues = card.faults.slice(0, mostCues);
  return (
    <article className={styles.card}>
      <PlanPart plan={card.plan} own={card.own} goal={goal} />
      <section className={styles.cues}>
        <h2>{texts.cues}</h2>
        {cues.length === 0 ? <p>{texts.noFaults}</p> : null}
        <ul>
          {cues.map((fault) => (
            <li key={fault.code} className={styles.fault}>
              <p className={styles.cue}>{fault.cue}</p>
              <p>
                <strong>{fault.name}</strong>
                <br />
                <span className={styles.soft}>
                  {texts.share(fault.share)}
                  {fault.per100S === null
                    ? ''
                    : ` · ${texts.lostPer100(seconds(fault.per100S.value), card.station.repsName)}`}
                </span>
              </p>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>{texts.forecast}</h2>
        <p className={styles.forecast}>
          <ForecastWords forecast={card.forecast} goal={goal} />
        </p>
        <p className={styles.soft}>{texts.basis(card.own.sets)}</p>
      </section>
      <section>
        <h2>{texts.day}</h2>
        <ul className={styles.items}>
          {texts.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      </section>
      <section className={styles.cautions}>
        <h2>{texts.cautions}</h2>
        <CautionsList />
        <p>{common.rulebook}</p>
      </section>
    </article>
  );
}

function PlanPart({ plan, own, goal }: { plan: RacePlan; own: RaceCard['own']; goal: string }) {
  const words = useWords().review;
  const texts = words.plans.card;
  const { duration, number } = useFormats();
  if (plan.kind === 'too-few') {
    return (
      <section>
        <p className={styles.sentence}>{texts.none(words.answer.why[plan.why])}</p>
      </section>
    );
  }
  if (plan.kind === 'out-of-reach') {
    return (
      <section data-testid="plan">
        <p className={styles.sentence}>{texts.out(duration(plan.quickestMs, 0))}</p>
        {plan.targetS === null ? null : <p>{texts.outPace(plan.targetS)}</p>}
      </section>
    );
  }
  const pauses = plan.splits.some((split) => split.breakMs > 0);
  return (
    <section className={styles.plan} data-testid="plan">
      <div>
        <p className={styles.goal}>{texts.goalIn(goal, duration(plan.totalMs, 0))}</p>
        <p className={styles.target}>{texts.targetOf(plan.targetS)}</p>
        <p className={styles.soft}>{texts.target}</p>
        <p>
          {texts[plan.effort]}{' '}
          <span className={styles.soft}>
            {own.cleanS === null || own.quickestS === null ? null : texts.own(own.cleanS, own.quickestS)}
          </span>
        </p>
        {plan.noRepMs > 0 ? (
          <p className={styles.soft}>{texts.held(duration(Math.round(plan.noRepMs / 1_000) * 1_000, 0))}</p>
        ) : null}
        {pauses ? null : <p className={styles.soft}>{texts.noBreaks}</p>}
        <details className="no-print">
          <summary>{texts.howTitle}</summary>
          {words.how.plan.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </details>
      </div>
      <Table
        caption={texts.plan}
        showCaption
        columns={[
          { key: 'reps', head: texts.columns.reps, figures: true, cell: (split) => number(split.reps) },
          { key: 'at', head: texts.columns.at, figures: true, cell: (split) => duration(split.atMs, 0) },
          {
            key: 'pause',
            head: texts.columns.pause,
            cell: (split, index) =>
              index === plan.splits.length - 1 ? texts.done : split.breakMs > 0 ? texts.pause(split.breakMs) : texts.on,
          },
        ]}
        rows={plan.splits}
        rowKey={(split) => String(split.reps)}
      />
    </section>
  );
}
