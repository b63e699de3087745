// Decisions about what a class asks of one of its tables: seats, prepared deals, controls, time, guided steps.
import { openRound, SEATS } from '../../shared-engine/index.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import { botName, FILL_IN_STYLE } from './bot-name.ts';
import type { ClassCommandToRoom, RoomCommand } from './command.ts';
import type { RoomEvent } from './event.ts';
import { isRoundRunning, namesAt, type RoomState } from './state.ts';
import { vacating } from './table-action.ts';
import { isPlayedOut } from './teacher-controls.ts';

const CLOSED: RoomEvent = { kind: 'round', event: { kind: 'closed' } };

export function decideForClass(state: RoomState, command: ClassCommandToRoom): Decision<RoomEvent> {
  switch (command.kind) {
    case 'set-controls': {
      const { controls } = command;
      if (JSON.stringify(controls) === JSON.stringify(state.controls)) return accept([]);
      // A table that only waited for its class to close closes by itself when the class is no longer guided.
      const over = !controls.guided && state.play !== null && isPlayedOut(state.play.round);
      return accept([{ kind: 'controls-changed', controls }, ...(over ? [CLOSED] : [])]);
    }
    case 'more-time': {
      const { before = state.play?.moreTime } = command;
      const isMeant = before === state.play?.moreTime;
      const timed = state.terms.deadline !== null && isRoundRunning(state) && isMeant;
      return accept(timed ? [{ kind: 'more-time', seconds: command.seconds }] : []);
    }
    case 'seat-player': {
      const { seat, name, secretHash } = command;
      if (state.seats[seat].kind === 'person') return reject('seat-taken');
      return accept([{ kind: 'seat-taken', seat, name, secretHash }]);
    }
    case 'rename-seat': {
      const { seat, name } = command;
      const held = state.seats[seat];
      const isNew = held.kind === 'person' && held.name !== name;
      return accept(isNew ? [{ kind: 'seat-renamed', seat, name }] : []);
    }
    case 'vacate-seat':
      return accept(state.seats[command.seat].kind === 'person' ? vacating(state, command.seat) : []);
    case 'advance':
      return decideAdvance(state, command);
  }
}

/** Outcomes that this table has taken over already are left out, so that telling it twice does no harm. */
function decideAdvance(
  { play }: RoomState,
  { round, outcomes, closed }: RoomCommand & { kind: 'advance' },
): Decision<RoomEvent> {
  if (play === null) return reject('no-round');
  if (play.number !== round) return reject('wrong-round');
  if (play.round.phase === 'closed') return accept([]);
  const advanced = outcomes
    .slice(play.round.actualSteps?.length ?? 0)
    .map((outcome): RoomEvent => ({ kind: 'round', event: { kind: 'advanced', outcome } }));
  return accept([...advanced, ...(closed ? [CLOSED] : [])]);
}

/** Every seat without a player gets its bot, so that each table is dealt to four. */
export function decidePreparedDeal(
  state: RoomState,
  { deal, bots, script }: RoomCommand & { kind: 'deal-prepared' },
): Decision<RoomEvent> {
  if (isRoundRunning(state)) return reject('round-running');
  const names = namesAt(state);
  const seated = SEATS.flatMap((seat): RoomEvent[] => {
    if (state.seats[seat].kind === 'person') return [];
    return [{ kind: 'bot-seated', seat, name: botName(seat, names), style: bots[seat] ?? FILL_IN_STYLE }];
  });
  const dealt = { ...openRound(deal, state.terms), ...(script.length > 0 && { script }) };
  return accept([...seated, { kind: 'round', event: dealt }]);
}
