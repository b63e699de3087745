// The tray and the button that passes it on, or what has been submitted and can still be taken back.
import { isWaitingFor, SEATS } from '../../shared-engine/index.ts';
import type { OpenPass } from '../room/open-pass.ts';
import type { Room, Seated } from '../room/room.ts';
import { nameOf } from '../room/seat-names.ts';
import { BLIND_QUESTION, chooseMore, passButton } from '../room/step-names.ts';
import { StepArrow } from '../room/step-strip.tsx';
import { sentenceList } from '../tiles/tile-names.ts';
import { TABLE } from './strings.ts';
import { Tray } from './tray.tsx';

interface PassPanelProps {
  readonly room: Room;
  readonly seated: Seated;
  readonly pass: OpenPass;
}

export function PassPanel({ room, seated, pass }: PassPanelProps) {
  const { layout, pendingCount } = room.state.value;
  const chosen = layout.tray.length + layout.blind;
  return (
    <div class={pass.submitted ? 'pass-panel submitted' : 'pass-panel'}>
      <Tray room={room} pass={pass} />
      {pass.submitted ? (
        <SubmittedPass room={room} seated={seated} pass={pass} />
      ) : (
        <div class="send">
          <button
            type="button"
            class="primary"
            // Undefined, and not false, where the question around it may still be deaf.
            aria-disabled={chosen < pass.needed || pendingCount > 0 || undefined}
            onClick={() => {
              if (pendingCount === 0) room.pass();
            }}
          >
            <StepArrow step={pass.step} />
            {passButton(pass.step, nameOf(seated.table, pass.to))}
          </button>
          <p class="count">{pendingCount > 0 ? TABLE.passing : chooseMore(pass.needed, chosen)}</p>
        </div>
      )}
      {pass.blindAllowed && !pass.submitted && <BlindChoice room={room} />}
    </div>
  );
}

function SubmittedPass({ room, seated, pass }: PassPanelProps) {
  const { view, table, you } = seated;
  const waiting = SEATS.filter((seat) => seat !== you && isWaitingFor(view.stage, seat)).map((seat) =>
    nameOf(table, seat),
  );
  return (
    <div class="send">
      <button type="button" onClick={() => room.choose({ kind: 'withdraw', step: pass.step })}>
        {TABLE.withdraw}
      </button>
      <p class="count">
        {TABLE.submitted} {waiting.length > 0 && TABLE.waitingFor(sentenceList(waiting))}
      </p>
    </div>
  );
}

function BlindChoice({ room }: { readonly room: Room }) {
  const { layout } = room.state.value;
  return (
    <fieldset class="blind">
      <legend>{BLIND_QUESTION}</legend>
      <div class="row">
        {[0, 1, 2, 3].map((count) => (
          <label key={count} class="choice pill">
            <input
              type="radio"
              name="blind"
              checked={layout.blind === count}
              onChange={() => room.setBlind(count)}
            />
            <span>{count === 0 ? 'None' : count}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
