// A lesson opened from its link or from a file, and played along without the server.
import { useSignal, useSignalEffect } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useMemo, useRef } from 'preact/hooks';
import { type CompiledCard, type Lesson, readLesson, type SeatView } from '../../../shared-engine/index.ts';
import { STEP_NAMES } from '../../room/step-names.ts';
import { tabStorage } from '../../storage/browser-storage.ts';
import { readLessonProgress, storeLessonProgress } from '../../storage/lesson-progress.ts';
import { FileButton } from '../../ui/file-button.tsx';
import { ProblemList } from '../../ui/problem-list.tsx';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import { createJudge } from '../question/judged.ts';
import type { Chart } from '../question/judgement-view.tsx';
import { Handout } from './handout.tsx';
import { MomentView, TeachersText } from './moment-view.tsx';
import {
  agreement,
  dealAfter,
  dealAt,
  hasPlace,
  LESSON_BEGIN,
  type LessonPlace,
  momentAt,
  type OwnChoices,
  placeKey,
  unpackLesson,
} from './play.ts';
import { agreedWords, LESSON } from './strings.ts';
import '../history/history.css';
import '../question/question.css';
import '../../tiles/tiles.css';
import './lesson.css';

interface LessonProps {
  readonly startDeepAnalysis: StartDeepAnalysis;
  readonly chart: Chart;
  /** The card beside the rack, as at a table. */
  readonly card: (shown: ShownCard) => ComponentChildren;
}

export interface ShownCard {
  readonly load: () => Promise<CompiledCard>;
  /** Of the seat at the moment that is played. */
  readonly view: SeatView;
  readonly onClose: () => void;
}

interface LessonScreenProps extends LessonProps {
  /** What stands behind the # of the link; empty where a file is to be opened. */
  readonly packed: string;
}

type Opened =
  | { readonly is: 'opening' }
  /** `why` is said above the problems. */
  | { readonly is: 'closed'; readonly why: string; readonly problems: readonly string[] }
  | { readonly is: 'open'; readonly lesson: Lesson; readonly text: string };

function openedFrom(text: string): Opened {
  const read = readLesson(text);
  if (read.ok) return { is: 'open', lesson: read.lesson, text };
  return { is: 'closed', why: LESSON.cannotPlay, problems: read.problems.map(({ message }) => message) };
}

export function LessonScreen({ packed, ...props }: LessonScreenProps) {
  const opened = useSignal<Opened>({ is: 'opening' });
  useEffect(() => {
    void unpackLesson(packed).then((unpacked) => {
      if (unpacked === null) opened.value = { is: 'closed', why: LESSON.none, problems: [] };
      else if (unpacked.ok) opened.value = openedFrom(unpacked.text);
      else opened.value = { is: 'closed', why: LESSON.cannot, problems: [LESSON[unpacked.why]] };
    });
  }, [packed, opened]);
  const now = opened.value;
  if (now.is === 'open') return <PlayAlong key={now.text} lesson={now.lesson} text={now.text} {...props} />;
  return (
    <main class="practice">
      <h1>{LESSON.title}</h1>
      {now.is === 'opening' && <p role="status">{LESSON.opening}</p>}
      {now.is === 'closed' && (
        <>
          <p>{now.why}</p>
          <ProblemList problems={now.problems} />
          <FileButton
            words={LESSON.file}
            onFile={(file) =>
              void file.text().then((text) => {
                opened.value = openedFrom(text);
              })
            }
          />
        </>
      )}
    </main>
  );
}

interface PlayAlongProps extends LessonProps {
  readonly lesson: Lesson;
  readonly text: string;
}

/** What was chosen in this tab before, as far as it fits. */
function useProgress(lesson: Lesson, text: string) {
  const before = useMemo(() => {
    const stored = readLessonProgress(tabStorage, text);
    return stored !== null && hasPlace(lesson, stored.place) ? stored : null;
  }, [lesson, text]);
  const place = useSignal<LessonPlace>(before?.place ?? LESSON_BEGIN);
  const chosen = useSignal<OwnChoices>(new Map(before?.chosen));
  useSignalEffect(() =>
    storeLessonProgress(tabStorage, text, { place: place.value, chosen: [...chosen.value] }),
  );
  return { place, chosen, isResumed: useSignal(before !== null) };
}

function PlayAlong({ lesson, text, startDeepAnalysis, chart, card }: PlayAlongProps) {
  const judge = useMemo(() => createJudge(lesson.card, startDeepAnalysis), [lesson, startDeepAnalysis]);
  useEffect(() => judge.stop, [judge]);
  const { place, chosen, isResumed } = useProgress(lesson, text);
  const isCardOpen = useSignal(false);
  const loadCard = useCallback(async () => lesson.card, [lesson]);
  const title = useRef<HTMLHeadingElement>(null);
  const at = place.value;
  const key = placeKey(at);
  const deal = dealAt(lesson, at);
  const moment = momentAt(lesson, at);
  const next = dealAfter(lesson, at);
  const name = LESSON.deal(at.deal + 1, lesson.deals.length, deal.title);

  function go(to: LessonPlace) {
    place.value = to;
    isResumed.value = false;
    title.current?.scrollIntoView({ block: 'start' });
    title.current?.focus();
  }
  function again() {
    chosen.value = new Map();
    go(LESSON_BEGIN);
  }
  return (
    <>
      <main class="practice play-along">
        <h1>{lesson.title}</h1>
        {key === placeKey(LESSON_BEGIN) && <p class="about">{LESSON.about(lesson.card.name)}</p>}
        <h2 ref={title} tabIndex={-1}>
          {[name, moment ? STEP_NAMES[moment.step] : next ? LESSON.dealOver : LESSON.over]
            .filter((part) => part !== '')
            .join(' · ')}
        </h2>
        {isResumed.value && moment !== null && (
          <p class="row">
            {LESSON.resumed}
            <button type="button" onClick={again}>
              {LESSON.again}
            </button>
          </p>
        )}
        <TeachersText text={deal.task} />
        {moment === null && next === null && <p>{agreedWords(agreement(lesson, chosen.value))}</p>}
        {moment === null ? (
          <DealOver next={next} onNext={go} onAgain={again} />
        ) : (
          <>
            <p class="aside">
              {LESSON.moment(at.moment + 1, deal.moments.length)} {deal.isEast && LESSON.east}
            </p>
            <MomentView
              key={key}
              moment={moment}
              own={chosen.value.get(key) ?? null}
              judge={judge}
              chart={chart}
              onChoose={(choice) => {
                chosen.value = new Map(chosen.value).set(key, choice);
              }}
              onNext={() => go({ ...at, moment: at.moment + 1 })}
            />
            {moment.view.terms.cardHelp !== 'none' &&
              (isCardOpen.value ? (
                card({
                  load: loadCard,
                  view: moment.view,
                  onClose: () => {
                    isCardOpen.value = false;
                  },
                })
              ) : (
                <button
                  type="button"
                  class="quiet-button"
                  onClick={() => {
                    isCardOpen.value = true;
                  }}
                >
                  {LESSON.card}
                </button>
              ))}
          </>
        )}
        <button type="button" class="quiet-button" onClick={() => window.print()}>
          {LESSON.print}
        </button>
      </main>
      <Handout lesson={lesson} />
    </>
  );
}

interface DealOverProps {
  /** Null behind the last deal. */
  readonly next: LessonPlace | null;
  readonly onNext: (next: LessonPlace) => void;
  readonly onAgain: () => void;
}

function DealOver({ next, onNext, onAgain }: DealOverProps) {
  return next === null ? (
    <button type="button" onClick={onAgain}>
      {LESSON.again}
    </button>
  ) : (
    <button type="button" class="primary" onClick={() => onNext(next)}>
      {LESSON.nextDeal}
    </button>
  );
}
