import { type CSSProperties, useRef, useState } from 'react';
import type { Breach } from '../../../../shared-types/night/breach.ts';
import { type Assignment, heatSpan } from '../../../../shared-types/night/night.ts';
import { classNames } from '../../../parts/look/class-names.ts';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import type { Shown } from './night-screen.tsx';
import { exchanged, freeJudges, keyOf, type Part, type Pick, personAt, samePick } from './places.ts';
import styles from './plan.module.css';

const parts: readonly Part[] = ['athlete', 'judge', 'shadow'];

/** The plan, heat by lane. Two names pressed one after the other, or one dragged onto the other, change places. */
export function PlanTable({ shown, breaches }: { shown: Shown; breaches: readonly Breach[] }) {
  const words = useWords().night.plan;
  const { locale } = useFormats();
  const { tell } = useNotices();
  const { record, roster, plan, begun, nameOf, write } = shown;
  const { arrangement } = roster;
  const [picked, setPicked] = useState<Pick | null>(null);
  const dragged = useRef<Pick | null>(null);
  const clock = new Intl.DateTimeFormat(locale, { timeStyle: 'short' });

  const change = async (one: Pick, other: Pick): Promise<void> => {
    setPicked(null);
    if (samePick(one, other)) return;
    const next = exchanged(plan, one, other);
    if (next === null) return tell(words.cannot, { kind: 'note' });
    const [first, second] = [personAt(plan, one), personAt(plan, other)].map((id) => nameOf(id ?? ''));
    if (!(await write({ kind: 'plan', why: 'by-hand', heats: next }))) return;
    tell(words.changed(first ?? '', second ?? ''), {
      undo: () => void write({ kind: 'plan', why: 'by-hand', heats: plan }),
    });
  };
  const laneName = (id: string): string => words.lane(arrangement.lanes.find((lane) => lane.id === id)?.name ?? id);
  const placeText = (pick: Pick): string => {
    const name = nameOf(personAt(plan, pick) ?? '');
    if (pick.kind === 'free') return words.freePlace(name, pick.heat + 1);
    return words.place(name, pick.part, pick.heat + 1, laneName(pick.lane));
  };
  const name = (pick: Pick, text: string, className?: string) => {
    const isPicked = picked !== null && samePick(picked, pick);
    const person = personAt(plan, pick) ?? '';
    const wrong = pick.kind === 'place' && breaches.some((breach) => concerns(breach, pick.heat, pick.lane, person));
    return (
      <button
        type="button"
        className={classNames(styles.name, className, isPicked && styles.picked, wrong && styles.wrong)}
        aria-label={placeText(pick)}
        aria-pressed={isPicked}
        draggable
        disabled={pick.heat < begun}
        data-place={keyOf(pick)}
        onClick={() => (picked === null ? setPicked(pick) : void change(picked, pick))}
        onDragStart={(event) => {
          dragged.current = pick;
          event.dataTransfer.effectAllowed = 'move';
          event.dataTransfer.setData('text/plain', nameOf(personAt(plan, pick) ?? ''));
        }}
        onDragEnd={() => {
          dragged.current = null;
        }}
        onDragOver={(event) => {
          if (dragged.current !== null) event.preventDefault();
        }}
        onDrop={(event) => {
          event.preventDefault();
          if (dragged.current !== null) void change(dragged.current, pick);
        }}
      >
        {text}
      </button>
    );
  };
  const station = (item: Assignment): string => {
    const held = arrangement.stations.find(({ id }) => id === item.station);
    const sheet = record.sheets.find(({ id, version }) => id === held?.sheet.id && version === held.sheet.version);
    return sheet?.station ?? item.station;
  };
  const cell = (heat: number, lane: string) => {
    const item = plan[heat]?.find((one) => one.lane === lane);
    if (item === undefined) return <span className={styles.soft}>{words.nobody}</span>;
    return (
      <>
        <span className={styles.soft}>{station(item)}</span>
        {parts.map((part) => {
          const person = item[part];
          if (person === null) return null;
          const head = words.partHeads[part];
          return (
            <div key={part}>
              {head === '' ? null : <span className={styles.part}>{head}</span>}
              {name(
                { kind: 'place', heat, lane, part },
                nameOf(person),
                part === 'athlete' ? styles.athlete : undefined,
              )}
            </div>
          );
        })}
      </>
    );
  };

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape drops what is taken up, wherever in the plan the focus is.
    <div
      className={styles.plan}
      style={printSize(plan.length, arrangement.lanes.length, arrangement.shadows)}
      onKeyDown={(event) => {
        if (event.key === 'Escape') setPicked(null);
      }}
    >
      <p className={classNames(styles.soft, 'no-print')} role="status" data-testid="hint">
        {picked === null ? words.how : words.picked(placeText(picked))}
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard. */}
      <section className={styles.scroll} tabIndex={0} aria-label={words.caption}>
        <table className={styles.table}>
          <caption className="visually-hidden">{words.caption}</caption>
          <thead>
            <tr>
              <th scope="col">{words.heat}</th>
              {arrangement.lanes.map((lane) => (
                <th key={lane.id} scope="col">
                  {words.lane(lane.name)}
                </th>
              ))}
              <th scope="col" className="no-print">
                {words.free}
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.map((_, heat) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a heat is its number.
              <tr key={heat}>
                <th scope="row">
                  {words.heatNumber(heat + 1)}
                  <span className={styles.time}>{clock.format(heatSpan(arrangement, heat).start)}</span>
                  {heat < begun ? <span className={styles.soft}>{words.begun}</span> : null}
                </th>
                {arrangement.lanes.map(({ id }) => (
                  <td key={id}>{cell(heat, id)}</td>
                ))}
                <td className="no-print">
                  {heat < begun
                    ? null
                    : freeJudges(roster, plan, heat).map((person, index) => (
                        // biome-ignore lint/suspicious/noArrayIndexKey: keeps the focus in the list when one is put to use.
                        <div key={index}>{name({ kind: 'free', heat, person }, nameOf(person))}</div>
                      ))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}

/** Whether a broken rule is about this person in this place; what concerns the whole night marks nobody. */
function concerns({ aim, heat, lane, people }: Breach, index: number, place: string, person: string): boolean {
  return !aim && heat === index + 1 && (lane === null || lane === place) && people.includes(person);
}

/** Letters on paper as large as let the whole plan stand on one page, from 5 to 10 points. */
function printSize(heats: number, lanes: number, shadows: boolean): CSSProperties {
  const lines = heats * (shadows ? 4 : 3) + 8;
  const size = Math.max(5, Math.min(10, 560 / (lines * 1.3), 90 / (lanes + 1)));
  return { '--plan-print': `${size.toFixed(1)}pt` };
}
