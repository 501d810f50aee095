import { lazy, Suspense, useId, useMemo } from 'react';
import type { TrialLine } from '../../../../shared-types/contract/drills/scores.ts';
import type { DrillRecord } from '../../../../shared-types/contract/drills.ts';
import { foldDrill } from '../../../../shared-types/drills/fold.ts';
import { advisedPlace } from '../../../../shared-types/drills/places.ts';
import { showRep, specificationOf, streamSpecificationOf } from '../../../../shared-types/drills/show.ts';
import { streamReps } from '../../../../shared-types/motion/stream.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Dialog } from '../../../parts/controls/dialog.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import type { Subject } from '../figure-view.tsx';
import { placeView } from '../places.ts';
import { FeedbackPanel } from '../run/feedback-panel.tsx';
import { type LookedAt, useReplay } from '../run/use-replay.ts';
import { useView } from '../run/use-view.ts';
import styles from './rep-look.module.css';

const FigureView = lazy(() => import('../figure-view.tsx'));
const none: readonly string[] = [];

/** A rep of a drill made anew from what its log keeps; null where the log does not have it. */
function remade(record: DrillRecord, trial: number): (LookedAt & { readonly look: number }) | null {
  const { drill } = record;
  const state = foldDrill(drill, record.events);
  const shown = state.trials.find((item) => item.trial === trial);
  if (shown === undefined) return null;
  if (shown.specification !== null) {
    const rep = showRep(drill, trial, specificationOf(drill, shown.specification), shown.place);
    return { ...rep, look: shown.specification.styleSeed };
  }
  const spec =
    state.stream === null ? undefined : streamReps(streamSpecificationOf(drill, state.stream.specification))[trial];
  return spec === undefined ? null : { ...showRep(drill, trial, spec, shown.place), look: drill.seed };
}

interface RepLookProps {
  readonly record: DrillRecord;
  /** Null while nothing is looked at. */
  readonly trial: TrialLine | null;
  readonly onClose: () => void;
}

/** A rep of a drill that is over, looked at again. */
export function RepLook({ record, trial, onClose }: RepLookProps) {
  const titleId = useId();
  return (
    <Dialog open={trial !== null} onClose={onClose} labelledBy={titleId}>
      {trial === null ? null : (
        <Look key={trial.trial} record={record} trial={trial} titleId={titleId} onClose={onClose} />
      )}
    </Dialog>
  );
}

function Look({
  record,
  trial,
  titleId,
  onClose,
}: RepLookProps & { readonly trial: TrialLine; readonly titleId: string }) {
  const all = useWords();
  const words = all.eye;
  const { drill, sheet } = record;
  const rep = useMemo(() => remade(record, trial.trial), [record, trial.trial]);
  const replay = useReplay(drill, rep, trial.call?.faults ?? none);
  const { view, put, walkTo } = useView(replay.best);
  const subject = useMemo((): Subject | null => {
    if (rep === null) return null;
    return {
      body: rep.motion.body,
      look: rep.look,
      around: rep.motion.scene,
      numbers: drill.numbers,
      travels: drill.movement === 'jump-burpee',
      movement: drill.movement,
      fault: replay.code,
    };
  }, [rep, drill, replay.code]);
  return (
    <>
      <h2 id={titleId}>
        {words.result.trial} {trial.trial + 1}
      </h2>
      {rep === null || subject === null ? null : (
        <div className={styles.look}>
          <div className={styles.picture}>
            <Suspense fallback={null}>
              <FigureView
                subject={subject}
                timeAt={replay.timeAt}
                poseAt={rep.motion.at}
                view={view}
                onView={put}
                marks={replay.marks}
                labelOf={(mark) => replay.measured(mark.code) ?? ''}
                label={(replay.code && replay.measured(replay.code)) ?? words.movements[drill.movement]}
              />
            </Suspense>
          </div>
          <FeedbackPanel
            drill={drill}
            sheet={sheet}
            rep={rep}
            call={trial.call}
            replay={replay}
            onShow={(code) => {
              replay.show(code);
              walkTo(placeView(advisedPlace(drill.movement, code)));
            }}
          />
        </div>
      )}
      <div>
        <Button weight="main" onClick={onClose}>
          {all.common.close}
        </Button>
      </div>
    </>
  );
}
