// Judges what happened in a room by its log alone: nothing acknowledged lost, nothing told that may not be known.
import { isDeepStrictEqual } from 'node:util';
import { tableFor } from '../../server/room/audience.ts';
import type { Logged } from '../../server/room/event.ts';
import { evolveRoom, replayRoom } from '../../server/room/evolve.ts';
import { personAt, type RoomState } from '../../server/room/state.ts';
import {
  addTo,
  bagOf,
  type Choice,
  dealTiles,
  decide,
  FULL_SET,
  facesOf,
  type RoundEvent,
  SEATS,
  type Table,
} from '../../shared-engine/index.ts';
import type { Ordered, Resident } from './simulated-player.ts';

export interface Scene {
  readonly code: string;
  readonly card: { readonly id: string; readonly name: string };
  readonly log: readonly Logged[];
  /** What each server that runs makes of the room. */
  readonly live: readonly RoomState[];
  readonly residents: readonly Resident[];
  /** Whether everything was healed long enough ago for all to agree. */
  readonly settled: boolean;
}

/** Refusals that say nothing about the command: it is to be given again. */
const NOT_NOW = ['try-later', 'too-fast'];

/** What was wrong, one sentence each; empty when all held. */
export function faultsIn(scene: Scene): string[] {
  const states = statesOf(scene.log);
  if (states === null) return ['the log does not begin with the opening'];
  return [
    ...numberFaults(scene.log),
    ...lawFaults(scene.log, states),
    ...tileFaults(states),
    ...scene.live.flatMap((live) =>
      scene.settled && !isDeepStrictEqual(live, states.at(-1)) ? ['a live room is not its replay'] : [],
    ),
    ...scene.residents.flatMap((resident) => residentFaults(resident, scene, states)),
  ];
}

function statesOf(log: readonly Logged[]): RoomState[] | null {
  const first = replayRoom(log.slice(0, 1));
  if (first === null) return null;
  const states = [first];
  for (const logged of log.slice(1)) states.push(evolveRoom(states.at(-1)!, logged));
  return states;
}

function numberFaults(log: readonly Logged[]): string[] {
  const commands = log.flatMap(({ command }) => (command === null ? [] : [command]));
  return [
    ...(log.every(({ seq }, index) => seq === index + 1) ? [] : ['the log has a gap or a fork']),
    ...(new Set(commands).size === commands.length ? [] : ['a command is in the log twice']),
  ];
}

/** Every event of a round is what the engine decides at that point of the log. */
function lawFaults(log: readonly Logged[], states: readonly RoomState[]): string[] {
  const faults: string[] = [];
  let due: readonly RoundEvent[] = [];
  for (const [index, { event }] of log.entries()) {
    if (event.kind !== 'round' || event.event.kind === 'dealt') {
      if (due.length > 0) faults.push(`event ${index + 1} cuts a decision in two`);
      due = [];
      continue;
    }
    const round = states[index - 1]?.play?.round;
    const command = commandOf(event.event);
    if (command !== null && round) {
      const decision = decide(round, command);
      due = decision.ok ? decision.events : [];
      if (!decision.ok) faults.push(`event ${index + 1} is unlawful: ${decision.code}`);
    }
    if (!isDeepStrictEqual(event.event, due[0])) faults.push(`event ${index + 1} was not decided`);
    due = due.slice(1);
  }
  return due.length > 0 ? [...faults, 'the log ends in the middle of a decision'] : faults;
}

function commandOf(event: RoundEvent) {
  switch (event.kind) {
    case 'sealed': {
      const { seat, step, pass } = event;
      return { kind: 'seal', seat, step, tiles: pass.tiles, blind: pass.blind, by: pass.by } as const;
    }
    case 'taken-back':
      return { kind: 'take-back', seat: event.seat, step: event.step, by: 'owner' } as const;
    case 'voted':
      return { kind: 'vote', step: 'vote', seat: event.seat, go: event.go, by: event.by } as const;
    case 'asked':
      return { ...asked(event.count), seat: event.seat, by: event.by } as const;
    default:
      return null;
  }
}

function asked(count: number): Extract<Choice, { kind: 'ask' }> {
  return { kind: 'ask', step: 'courtesy-ask', count };
}

function tileFaults(states: readonly RoomState[]): string[] {
  const set = facesOf(FULL_SET).join();
  const wrong = states.filter(({ play }) => {
    if (play === null) return false;
    const { wall } = dealTiles(play.round.deal);
    const held = play.round.racks.reduce((all, rack) => addTo(all, facesOf(rack)), bagOf(wall));
    return facesOf(held).join() !== set;
  });
  return wrong.map(({ seq }) => `after event ${seq} there are not the 152 tiles of the set`);
}

function residentFaults(resident: Resident, scene: Scene, states: readonly RoomState[]): string[] {
  const { name, told, owner, reviews } = resident;
  const faults: string[] = [];
  const commands = new Set(scene.log.map(({ command }) => command));
  for (const [id, ordered] of resident.ordered) {
    const kept = commands.has(`${owner?.since}/${id}`);
    for (const fault of orderFaults(ordered, kept, scene.settled)) faults.push(`${name}: ${fault}`);
  }
  let seen = 0;
  for (const { seq, table } of told) {
    if (seq < seen) faults.push(`${name} was told event ${seq} after event ${seen}`);
    seen = seq;
    const state = states[seq - 1];
    if (state === undefined) faults.push(`${name} was told of event ${seq}, which is not in the log`);
    else if (!isDeepStrictEqual(still(table), still(tableAt(state, scene, owner)))) {
      faults.push(`${name} was told another table of event ${seq} than may be known`);
    }
  }
  const wrongReview = reviews.some(({ review }) => review.seat !== owner?.seat);
  if (wrongReview) faults.push(`${name} was told somebody else’s review`);
  if (scene.settled && seen !== states.length) {
    faults.push(`${name} knows ${seen} events of ${states.length} at the end`);
  }
  return faults;
}

function orderFaults({ order, answers }: Ordered, kept: boolean, settled: boolean): string[] {
  const final = answers.map(({ code }) => code).filter((code) => !NOT_NOW.includes(code));
  const acked = final.includes('ack');
  const changes = order.kind === 'choose';
  return [
    ...(acked && changes && !kept ? [`${order.id} was acknowledged and is lost`] : []),
    ...(kept && final.some((code) => code !== 'ack') ? [`${order.id} was refused and happened`] : []),
    ...(new Set(final).size > 1 ? [`${order.id} was answered in two ways`] : []),
    ...(settled && final.length === 0 ? [`${order.id} was never answered`] : []),
  ];
}

function tableAt(state: RoomState, { code, card }: Scene, owner: Resident['owner']): Table {
  const person = owner && personAt(state, owner.seat, owner.since);
  const facts = { code, card, stepSince: 0, now: 0 };
  return tableFor(state, facts, owner && person && { seat: owner.seat, person });
}

/** Without the time left, which no log knows. */
function still(table: Table): Table {
  return { ...table, remaining: null };
}

/** How many of the events were chosen by whom; a report that counts nothing proves nothing. */
export function choicesIn(log: readonly Logged[]): number {
  return log.filter(({ event }) => event.kind === 'round' && commandOf(event.event) !== null).length;
}

/** Seats that a person holds, with the event that seated them. */
export function ownersIn(log: readonly Logged[]): { seat: (typeof SEATS)[number]; since: number }[] {
  const state = replayRoom(log);
  return SEATS.flatMap((seat) => {
    const chair = state?.chairs[seat];
    return chair?.kind === 'person' ? [{ seat, since: chair.since }] : [];
  });
}
