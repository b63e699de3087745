// (room, command) → the events it causes, or one refusal; nothing else decides what may happen in a room.
import {
  type Choice,
  decide,
  neighbour,
  openRound,
  type RoundEvent,
  SEATS,
  type Seat,
  stream,
} from '../../shared-engine/index.ts';
import { botName, FILL_IN_STYLE } from './bot-name.ts';
import { decideLed, ledDeal } from './class-table.ts';
import type { ClassOpening, Opening, Owner, RoomCommand } from './command.ts';
import { accept, type RoomDecision, turnDown } from './decision.ts';
import type { RoomEvent } from './event.ts';
import { isHeld } from './lead.ts';
import { personAt, type RoomState, roundRuns } from './state.ts';
import { decideAct } from './table-act.ts';

/** The first events of a room: its opener sits on seat 0, the bots where they were wished for. */
export function openingEvents(opening: Opening | ClassOpening): RoomEvent[] {
  if (opening.door === 'class') {
    return [{ kind: 'opened', door: 'class', terms: opening.terms, card: opening.card }];
  }
  const { door, terms, bots, card, name, key } = opening;
  const seated = SEATS.slice(1).flatMap((seat): RoomEvent[] => {
    const style = bots[seat - 1];
    return style ? [{ kind: 'bot-seated', seat, name: botName(seat, [name]), style }] : [];
  });
  return [{ kind: 'opened', door, terms, card }, { kind: 'seat-taken', seat: 0, name, key }, ...seated];
}

export function decideRoom(state: RoomState, command: RoomCommand): RoomDecision {
  if (state.closed) return turnDown('no-such-room');
  switch (command.kind) {
    case 'take-seat':
      return decideSeat(state, command);
    case 'choose':
      return decideChoice(state, command);
    case 'choose-for': {
      const { seat, by, round, choice } = command;
      return inRound(state, round, { seat, by, choice });
    }
    case 'come':
      return decideComing(state, command);
    case 'go':
      return decideGoing(state, command);
    case 'change-key':
      return decideKey(state, command);
    case 'take-in-hand':
      return decideInHand(state, command);
    case 'act':
      return ownerIs(state, command.owner)
        ? decideAct(state, command.owner, command.act)
        : turnDown('not-seated');
    case 'deal':
      return decideDeal(state, command.seed);
    case 'deal-prepared':
      return ledDeal(state, command);
    case 'lead':
    case 'more-time':
    case 'seat-pupil':
    case 'free-pupil':
    case 'follow':
      return decideLed(state, command);
    case 'close':
      return accept([{ kind: 'closed' }]);
  }
}

/** A person may sit where no person sits; bots step aside, but not with tiles in hand. */
function decideSeat(
  state: RoomState,
  { seat: wished, name, key }: RoomCommand & { kind: 'take-seat' },
): RoomDecision {
  if (state.door === 'class') return turnDown('no-such-room');
  const empty = SEATS.filter((seat) => state.chairs[seat].kind === 'empty');
  const bots = SEATS.filter((seat) => state.chairs[seat].kind === 'bot');
  const seat = wished ?? [...empty, ...bots][0];
  if (seat === undefined || state.chairs[seat].kind === 'person') return turnDown('seat-taken');
  if (roundRuns(state)) return turnDown('round-running');
  return accept([{ kind: 'seat-taken', seat, name, key }]);
}

function decideChoice(state: RoomState, command: RoomCommand & { kind: 'choose' }): RoomDecision {
  const { owner, round, seat, choice } = command;
  if (!ownerIs(state, owner)) return turnDown('not-seated');
  if (seat !== owner.seat) return turnDown('not-your-seat');
  if (state.play !== null && isHeld(state.play.round, state.lead)) return turnDown('held');
  return inRound(state, round, { seat, by: 'owner', choice });
}

function inRound(
  state: RoomState,
  number: number,
  { seat, by, choice }: { seat: Seat; by: 'owner' | 'bot' | 'stand-in'; choice: Choice },
): RoomDecision {
  if (state.play === null) return turnDown('no-round');
  if (state.play.number !== number) return turnDown('wrong-round');
  const decision = decide(state.play.round, { ...choice, seat, by });
  if (!decision.ok) return decision;
  // One line closes for the whole class at once (rule L1).
  const events = state.lead.oneLine
    ? decision.events.filter(({ kind }) => kind !== 'closed')
    : decision.events;
  return accept(events.map(inRoom));
}

/** Bots fill the empty seats, then the tiles are dealt; the deal moves to the right each round (rule D3). */
function decideDeal(state: RoomState, seed: string): RoomDecision {
  if (roundRuns(state)) return turnDown('round-running');
  const names = state.chairs.flatMap((chair) => (chair.kind === 'empty' ? [] : [chair.name]));
  const filled = SEATS.filter((seat) => state.chairs[seat].kind === 'empty').map((seat): RoomEvent => {
    const name = botName(seat, names);
    return { kind: 'bot-seated', seat, name, style: FILL_IN_STYLE };
  });
  const last = state.play?.round.deal.dealer;
  const dealer =
    last === undefined ? SEATS[stream(seed, 'first dealer').below(4)]! : neighbour(last, 'right');
  const { layOpen } = state.terms;
  return accept([...filled, inRoom(openRound({ seed, dealer }, { layOpen }))]);
}

/** One page may reach two servers, and one of them may be slow: its newer line stays, whichever is heard of first. */
function decideComing(
  state: RoomState,
  { owner, node, line, from }: RoomCommand & { kind: 'come' },
): RoomDecision {
  const person = personAt(state, owner.seat, owner.since);
  if (person === null) return turnDown('not-seated');
  const there = person.presence.kind === 'here' ? person.presence.from : undefined;
  if (there && from && there.page === from.page && there.nth > from.nth) return accept([]);
  return accept([{ kind: 'came', seat: owner.seat, node, line, ...(from && { from }) }]);
}

/** Only the newest connection's end counts. */
function decideGoing(state: RoomState, { seat, line }: RoomCommand & { kind: 'go' }): RoomDecision {
  const chair = state.chairs[seat];
  const present = chair.kind === 'person' && chair.presence.kind === 'here' && chair.presence.line === line;
  return accept(present ? [{ kind: 'went', seat, line }] : []);
}

/** A secret that was changed and used since is worth nothing, whoever brings it. */
function decideKey(
  state: RoomState,
  { owner, shown, key }: RoomCommand & { kind: 'change-key' },
): RoomDecision {
  const person = personAt(state, owner.seat, owner.since);
  const good = person?.keys.includes(shown) === true;
  return good
    ? accept([{ kind: 'key-changed', seat: owner.seat, key, before: shown }])
    : turnDown('not-seated');
}

function decideInHand(
  { inHandOf }: RoomState,
  { node, gone }: RoomCommand & { kind: 'take-in-hand' },
): RoomDecision {
  if (inHandOf.includes(node)) return accept([]);
  return accept([{ kind: 'in-hand', node, others: inHandOf.filter((other) => !gone.includes(other)) }]);
}

function ownerIs(state: RoomState, { seat, since }: Owner): boolean {
  return personAt(state, seat, since) !== null;
}

function inRoom(event: RoundEvent): RoomEvent {
  return { kind: 'round', event };
}
