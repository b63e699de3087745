// The table in play: steps, opponents, the open question, and the player's own rack at the bottom.
import type { ComponentChildren } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import { decisionFor, isWaitingFor, SEATS, stepOf } from '../../shared-engine/index.ts';
import { CoachPanel } from '../coach/coach-panel.tsx';
import { ClubListed } from '../room/club-listing.tsx';
import { openPass } from '../room/open-pass.ts';
import { isCardClosed, mayAskCoach, type Room, type Seated } from '../room/room.ts';
import { neighborNames } from '../room/seat-names.ts';
import { SixWords } from '../room/six-words.tsx';
import { wasStopped } from '../room/step-names.ts';
import { StepStrip } from '../room/step-strip.tsx';
import { TableTalk } from '../room/table-talk.tsx';
import { WaysFolded } from '../room/ways-panel.tsx';
import { FramesLater } from '../ui/frames-later.tsx';
import { AimPanel } from './aim-panel.tsx';
import { lastAnnouncement } from './announcements.ts';
import { Clock } from './clock.tsx';
import { History } from './history.tsx';
import { Opponents } from './opponents.tsx';
import { PassingTiles } from './passing-tiles.tsx';
import { Question } from './question.tsx';
import { Rack } from './rack.tsx';

interface TableScreenProps {
  readonly room: Room;
  readonly seated: Seated;
  /** The card, for the place beside the rack. */
  readonly card: ComponentChildren;
}

export function TableScreen({ room, seated, card }: TableScreenProps) {
  const { deadlineAt, cardOpen: cardWanted, commitment, home } = room.state.value;
  const { terms } = seated.view;
  const cardClosed = isCardClosed(seated);
  const cardOpen = cardWanted && !cardClosed;
  const pass = openPass(seated.view, seated.you);
  const decision = decisionFor(seated.view.stage, seated.you, terms);
  const { steps } = seated.view.record;
  const last = steps.at(-1);
  const stage = `${seated.table.round}/${steps.length}`;
  const waiting = SEATS.filter((seat) => isWaitingFor(seated.view.stage, seat));
  // It takes the place of a review that may have been scrolled far down.
  useLayoutEffect(() => window.scrollTo(0, 0), []);

  /** Keys 1 to 3 take a tile back wherever the focus is, except where a number means something else. */
  function onKeyDown(event: KeyboardEvent) {
    const inField = event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement;
    if (inField || event.ctrlKey || event.metaKey || event.altKey) return;
    const slot = ['1', '2', '3'].indexOf(event.key);
    if (slot >= 0) room.emptySlot(slot);
  }

  return (
    <main class={cardOpen ? 'table with-card' : 'table'} onKeyDown={onKeyDown}>
      <div class="progress">
        <StepStrip open={stepOf(seated.view.stage)} stopped={wasStopped(steps)} terms={terms} />
        <Clock dueAt={deadlineAt} />
      </div>
      <div class="surface-frame">
        <div class="surface cloth">
          <Opponents seated={seated} />
          <Question room={room} seated={seated} />
          <PassingTiles
            round={seated.table.round}
            steps={steps}
            bottom={seated.you}
            received={last?.kind === 'move' ? last.received : []}
          />
        </div>
      </div>
      <div class="own-side">
        <p class="last-event" aria-hidden="true">
          {lastAnnouncement(seated.table, seated.view)}
        </p>
        <Rack room={room} east={seated.view.dealer === seated.you} cardClosed={cardClosed} />
        <div class="extras">
          <FramesLater of={stage} frames={5}>
            <TableTalk room={room} table={seated.table} waiting={waiting} />
            {pass && <AimPanel key={pass.step} room={room} round={seated.table.round} step={pass.step} />}
            {mayAskCoach(seated.table) && decision && (pass !== null || seated.view.answer === null) && (
              <CoachPanel
                key={`${seated.table.round}/${decision.step}`}
                choice={{ record: seated.view.record, decision }}
                loadCard={room.loadCard}
                names={neighborNames(seated.table, seated.you)}
                onHelp={(named) => room.noteHelp(seated.table.round, decision.step, named)}
              />
            )}
            <ClubListed table={seated.table} />
            {terms.passLog && <History seated={seated} />}
            <WaysFolded mode={seated.table.mode} terms={terms} />
            {home === 'server' && commitment && (
              <SixWords key={commitment.round} commitment={commitment.commitment} />
            )}
          </FramesLater>
        </div>
      </div>
      {cardOpen && card}
    </main>
  );
}
