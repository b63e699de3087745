// One moment of a lesson: what came and the rack; first one's own choice, then the teacher's and the judge's beside it.
import { useEffect } from 'preact/hooks';
import { type AnswerChoice, type LessonMoment, pendingDecision } from '../../../shared-engine/index.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { TileText } from '../../tiles/tile-text.tsx';
import { ChoiceShort } from '../question/choice-short.tsx';
import { DecisionForm } from '../question/decision-form.tsx';
import type { Judge } from '../question/judged.ts';
import { type Chart, JudgementView } from '../question/judgement-view.tsx';
import { verdictWords } from '../question/verdict-words.ts';
import { isFaulted, isSameChoice } from './play.ts';
import { asksFor, LESSON } from './strings.ts';

interface MomentProps {
  readonly moment: LessonMoment;
  /** Null before the player has chosen. */
  readonly own: AnswerChoice | null;
  readonly judge: Judge;
  readonly chart: Chart;
  readonly onChoose: (choice: AnswerChoice) => void;
  readonly onNext: () => void;
}

export function MomentView({ moment, own, judge, chart, onChoose, onNext }: MomentProps) {
  const { view, teacher } = moment;
  const decision = pendingDecision(view);
  return (
    <>
      <Arrived moment={moment} />
      {own === null && decision !== null && (
        <section class="lesson-question" aria-label={LESSON.rack}>
          {decision.kind !== 'pass' && <p>{asksFor(decision.kind)}</p>}
          {decision.kind !== 'pass' && <TileRow tiles={view.rack} />}
          <DecisionForm rack={view.rack} decision={decision} onAnswer={onChoose} />
        </section>
      )}
      {own !== null && (
        <>
          <section class="lesson-compared" aria-label={LESSON.rack}>
            <TileRow tiles={view.rack} />
          </section>
          <Comparison moment={moment} own={own} judge={judge} chart={chart} />
          <button type="button" class="primary" onClick={onNext}>
            {teacher === null ? LESSON.goOnWords : LESSON.goOn}
          </button>
        </>
      )}
    </>
  );
}

/** Tiles that the teacher set are marked so wherever they are shown (rule T3). */
export function Arrived({ moment: { arrived } }: Pick<MomentProps, 'moment'>) {
  if (arrived === null) return null;
  return (
    <p class="lesson-arrived">
      {LESSON.arrived}: <TileRow tiles={arrived.tiles} />
      {arrived.isScripted && <span class="aside"> ({LESSON.scripted})</span>}
    </p>
  );
}

/** Nothing where the teacher wrote nothing. */
export function TeachersText({ text }: { readonly text: string | null }) {
  if (text === null) return null;
  return (
    <p class="task">
      <TileText text={text} />
    </p>
  );
}

interface ComparisonProps extends Pick<MomentProps, 'moment' | 'judge' | 'chart'> {
  readonly own: AnswerChoice;
}

function Comparison({ moment: { view, teacher, words }, own, judge, chart }: ComparisonProps) {
  const { record } = view;
  const isSame = teacher !== null && isSameChoice(own, teacher);
  useEffect(() => {
    judge.ask(record, own);
    if (teacher !== null && !isSame) judge.ask(record, teacher);
  }, [judge, record, own, teacher, isSame]);
  const mine = judge.of(record, own);
  const theirs = teacher === null ? null : judge.of(record, isSame ? own : teacher);
  return (
    <div class="lesson-compared">
      <dl aria-live="polite">
        <div>
          <dt>{LESSON.you}</dt>
          <dd>
            <ChoiceShort choice={own} /> <b>{verdictWords(mine)}</b>
          </dd>
        </div>
        <div>
          <dt>{LESSON.teacher}</dt>
          <dd>
            {isSame && LESSON.same}
            {teacher !== null && !isSame && (
              <>
                <ChoiceShort choice={teacher} /> <b>{verdictWords(theirs)}</b>
              </>
            )}
          </dd>
        </div>
      </dl>
      <TeachersText text={words} />
      {isFaulted(theirs) && <p class="notice">{LESSON.differ}</p>}
      <details class="panel">
        <summary>{LESSON.judgeOfYou}</summary>
        <JudgementView judge={judge} record={record} choice={own} title={LESSON.howGood} chart={chart} />
      </details>
      {teacher !== null && !isSame && (
        <details class="panel">
          <summary>{LESSON.judgeOfTeacher}</summary>
          <p class="aside">{LESSON.asIfYours}</p>
          <JudgementView
            judge={judge}
            record={record}
            choice={teacher}
            title={LESSON.howGood}
            chart={chart}
            whose={LESSON.teachersPass}
          />
        </details>
      )}
    </div>
  );
}
