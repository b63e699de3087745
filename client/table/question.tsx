// What the open step asks of this seat.
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { isWaitingFor, neighbor, SEATS, stepOf } from '../../shared-engine/index.ts';
import { openPass } from '../room/open-pass.ts';
import type { Room, Seated } from '../room/room.ts';
import { nameOf } from '../room/seat-names.ts';
import {
  courtesyAbout,
  courtesyQuestion,
  passTitle,
  STEP_NAMES,
  VOTE_ABOUT,
  VOTE_QUESTION,
} from '../room/step-names.ts';
import { sentenceList } from '../tiles/tile-names.ts';
import { useDeafAtFirst } from '../ui/second-tap.ts';
import { PassPanel } from './pass-panel.tsx';
import { TABLE } from './strings.ts';

interface QuestionProps {
  readonly room: Room;
  readonly seated: Seated;
}

export function Question({ room, seated }: QuestionProps) {
  const { view, you, table } = seated;
  const { notice, layout } = room.state.value;
  const heading = useRef<HTMLHeadingElement>(null);
  const step = stepOf(view.stage);
  const answered = view.answer !== null;
  // A button that was pressed may be gone now; the focus goes to the question rather than nowhere.
  useEffect(() => {
    if (step !== null && document.activeElement === document.body) heading.current?.focus();
  }, [step, answered]);
  const pass = openPass(view, you);
  const choosesAtOnce = pass === null || pass.submitted || layout.tray.length + layout.blind >= pass.needed;
  const { isDeaf, onClickCapture } = useDeafAtFirst(`${table.round}/${step}/${answered}`, choosesAtOnce);

  // A table that the teacher has stopped asks nothing.
  if (table.controls?.held) {
    return (
      <section class="question" aria-labelledby="question">
        <h1 id="question" ref={heading} tabIndex={-1}>
          {TABLE.held}
        </h1>
        <p class="about">{TABLE.heldAbout}</p>
      </section>
    );
  }

  const asks = step === 'vote' || step === 'courtesy-ask';
  const across = nameOf(table, neighbor(you, 'across'));
  const title = pass
    ? passTitle(table, pass)
    : step === 'vote'
      ? VOTE_QUESTION
      : step === 'courtesy-ask'
        ? courtesyQuestion(across)
        : STEP_NAMES['courtesy-pass'];
  return (
    <section class="question" aria-labelledby="question" aria-disabled={isDeaf} {...{ onClickCapture }}>
      <h1 id="question" ref={heading} tabIndex={-1}>
        {pass && <span class="spoken">{STEP_NAMES[pass.step]}. </span>}
        {title}
      </h1>
      {pass && <PassPanel room={room} seated={seated} pass={pass} />}
      {step === 'vote' && !answered && (
        <>
          <p class="about">{VOTE_ABOUT}</p>
          <AnswerButtons>
            <button
              type="button"
              class="primary"
              onClick={() => room.choose({ kind: 'vote', step, go: true })}
            >
              {TABLE.continue}
            </button>
            <button
              type="button"
              class="primary"
              onClick={() => room.choose({ kind: 'vote', step, go: false })}
            >
              {TABLE.stop}
            </button>
          </AnswerButtons>
        </>
      )}
      {step === 'courtesy-ask' && !answered && (
        <>
          <p class="about">{courtesyAbout(across)}</p>
          <AnswerButtons>
            {[0, 1, 2, 3].map((count) => (
              <button
                key={count}
                type="button"
                class="primary number"
                onClick={() => room.choose({ kind: 'ask', step, count })}
              >
                {count}
              </button>
            ))}
          </AnswerButtons>
        </>
      )}
      {asks && answered && <OwnAnswer seated={seated} />}
      {step === 'courtesy-pass' && !pass && <p class="about">{TABLE.othersPass}</p>}
      <p class="notice" role="alert">
        {notice}
      </p>
    </section>
  );
}

function AnswerButtons({ children }: { readonly children: ComponentChildren }) {
  return <div class="answers">{children}</div>;
}

/** This seat's answer, and whom the table waits for. */
function OwnAnswer({ seated }: { readonly seated: Seated }) {
  const { view, you, table } = seated;
  const { answer } = view;
  const said =
    answer?.kind === 'vote'
      ? answer.go
        ? TABLE.youSaidContinue
        : TABLE.youSaidStop
      : answer?.kind === 'ask'
        ? TABLE.youAsked(answer.count)
        : '';
  const waiting = SEATS.filter((seat) => seat !== you && isWaitingFor(view.stage, seat)).map((seat) =>
    nameOf(table, seat),
  );
  return (
    <p class="own-answer">
      {said} {waiting.length > 0 && TABLE.waitingFor(sentenceList(waiting))}
    </p>
  );
}
