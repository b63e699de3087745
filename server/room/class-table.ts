// What a class does at one of its tables: seats pupils, deals the prepared tiles, holds, gives time, leads on its line.
import { openRound, SEATS } from '../../shared-engine/index.ts';
import { botName, FILL_IN_STYLE } from './bot-name.ts';
import type { RoomCommand } from './command.ts';
import { accept, type RoomDecision, turnDown } from './decision.ts';
import type { RoomEvent } from './event.ts';
import { isPlayedOut } from './lead.ts';
import { type RoomState, roundRuns } from './state.ts';
import { leaving } from './table-act.ts';

const CLOSED: RoomEvent = { kind: 'round', event: { kind: 'closed' } };

type Led = RoomCommand & { kind: 'lead' | 'more-time' | 'seat-pupil' | 'free-pupil' | 'follow' };

export function decideLed(state: RoomState, command: Led): RoomDecision {
  switch (command.kind) {
    case 'lead': {
      const { lead } = command;
      if (JSON.stringify(lead) === JSON.stringify(state.lead)) return accept([]);
      // A table that only waited for its class to close closes by itself when no line is played any more.
      const over = !lead.oneLine && state.play !== null && isPlayedOut(state.play.round);
      return accept([{ kind: 'led', lead }, ...(over ? [CLOSED] : [])]);
    }
    case 'more-time': {
      const timed = state.terms.deadline !== null && roundRuns(state);
      return accept(timed ? [{ kind: 'more-time', seconds: command.seconds }] : []);
    }
    case 'seat-pupil': {
      const { seat, name, key } = command;
      if (state.chairs[seat].kind === 'person') return turnDown('seat-taken');
      return accept([{ kind: 'seat-taken', seat, name, key }]);
    }
    case 'free-pupil':
      return accept(state.chairs[command.seat].kind === 'person' ? leaving(state, command.seat) : []);
    case 'follow':
      return decideFollow(state, command);
  }
}

/** What this table has followed already is left out, so that telling it twice does no harm. */
function decideFollow(
  { play }: RoomState,
  { round, line, closed }: RoomCommand & { kind: 'follow' },
): RoomDecision {
  if (play === null) return turnDown('no-round');
  if (play.number !== round) return turnDown('wrong-round');
  if (play.round.phase === 'closed') return accept([]);
  const followed = line
    .slice(play.round.own?.length ?? 0)
    .map((outcome): RoomEvent => ({ kind: 'round', event: { kind: 'followed', outcome } }));
  return accept([...followed, ...(closed ? [CLOSED] : [])]);
}

/** Every seat without a pupil gets its bot, so that each table is dealt to four. */
export function ledDeal(
  state: RoomState,
  { deal, bots }: RoomCommand & { kind: 'deal-prepared' },
): RoomDecision {
  if (roundRuns(state)) return turnDown('round-running');
  const names = state.chairs.flatMap((chair) => (chair.kind === 'empty' ? [] : [chair.name]));
  const seated = SEATS.flatMap((seat): RoomEvent[] => {
    if (state.chairs[seat].kind === 'person') return [];
    return [{ kind: 'bot-seated', seat, name: botName(seat, names), style: bots[seat] ?? FILL_IN_STYLE }];
  });
  const { layOpen } = state.terms;
  return accept([...seated, { kind: 'round', event: openRound(deal, { layOpen }) }]);
}
