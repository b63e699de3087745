// Checks a room against its log: nothing acknowledged is lost, nobody receives what they may not know.
import { isDeepStrictEqual } from 'node:util';
import { recordedIn } from '../../server/aggregate/recorded.ts';
import { replay } from '../../server/aggregate/replay.ts';
import { tableFor } from '../../server/delivery/audience.ts';
import type { StoredLog } from '../../server/ports.ts';
import { evolveRoom } from '../../server/room/evolve.ts';
import { FRIENDS_TABLE } from '../../server/room/policy.ts';
import { type RecordedRoomEvent, ROOM, replayRoom } from '../../server/room/room.ts';
import { holderAt, type RoomState } from '../../server/room/state.ts';
import { roomEvents } from '../../server/room/stored-event.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import type { Choice } from '../../shared-engine/rules/exchange/command.ts';
import { decide } from '../../shared-engine/rules/exchange/decide.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import { addTo, bagOf, FULL_SET, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import type { SentCommand, SimulatedPlayer } from './simulated-player.ts';

export interface Evidence {
  readonly code: string;
  readonly card: { readonly id: string; readonly name: string };
  readonly stored: StoredLog;
  /** The state of the room on each running server. */
  readonly live: readonly RoomState[];
  readonly players: readonly SimulatedPlayer[];
  /** How long the servers let somebody be away before a bot chooses. */
  readonly absentMs: number;
  /** Whether the last fault ended long enough ago for all to agree. */
  readonly healed: boolean;
}

/** Rejections that say nothing about the command: it is sent again. */
const RETRYABLE = ['try-later', 'too-fast', 'newer-connection'];
/** Accepted commands of one sender that a server surely remembers, whatever else that sender was answered. */
const SURELY_REMEMBERED = 8;

/** What was wrong, one sentence each; empty when every invariant holds. */
export function violationsIn(scene: Evidence): string[] {
  const { rows } = scene.stored;
  const log = rows.flatMap((row) => recordedIn(row, roomEvents));
  const states = statesOf(log);
  if (states === null) return ['the log does not begin with the opening'];
  return [
    ...sequenceViolations(log),
    ...storedTwice(scene.stored),
    ...snapshotViolations(scene.stored, states.at(-1)!),
    ...decisionViolations(log, states),
    ...tileViolations(states),
    ...scene.live.flatMap((live) =>
      scene.healed && !isDeepStrictEqual(live, states.at(-1)) ? ['a live room is not its replay'] : [],
    ),
    ...scene.players.flatMap((player) => playerViolations(player, scene, states)),
  ];
}

function statesOf(log: readonly RecordedRoomEvent[]): RoomState[] | null {
  const first = replayRoom(log.slice(0, 1));
  if (first === null) return null;
  const states = [first];
  for (const logged of log.slice(1)) states.push(evolveRoom(states.at(-1)!, logged));
  return states;
}

function commandsIn({ stored }: Evidence): string[] {
  return stored.rows.flatMap(({ commands }) => commands);
}

/** Commands that are in the log twice, each with the events of the rows that it is in. */
function storedTwice({ rows }: Evidence['stored']): string[] {
  const places = new Map<string, string[]>();
  for (const row of rows) {
    const kinds = recordedIn(row, roomEvents).map(({ event }) => event.kind);
    for (const command of row.commands)
      places.set(command, [...(places.get(command) ?? []), `${row.after + 1} ${kinds.join(' ')}`]);
  }
  return [...places].flatMap(([command, found]) =>
    found.length > 1 ? [`${command} is in the log ${found.length} times: ${found.join(', ')}`] : [],
  );
}

/** What a server that starts from the snapshot has must be what the whole log says: the room, and who was answered. */
function snapshotViolations({ kind, snapshot, rows }: StoredLog, state: RoomState): string[] {
  if (snapshot === null) return [];
  const behind = rows.filter(({ after, version }) => after === 0 || version > snapshot.version);
  const loaded = replay(ROOM, { kind, snapshot, rows: behind })!;
  const bySender = new Map<string, string[]>();
  for (const id of rows.flatMap(({ commands }) => commands)) {
    // As the server has it: ids without one are of a single sender.
    const sender = id.includes('/') ? id.slice(0, id.indexOf('/')) : '';
    bySender.set(sender, [...(bySender.get(sender) ?? []), id]);
  }
  const due = [...bySender.values()].flatMap((ids) => ids.slice(-SURELY_REMEMBERED));
  return [
    ...(isDeepStrictEqual(loaded.states.at(-1), state) ? [] : ['the snapshot leads to another room']),
    ...due.filter((id) => !loaded.commands.includes(id)).map((id) => `the snapshot has forgotten ${id}`),
  ];
}

function sequenceViolations(log: readonly RecordedRoomEvent[]): string[] {
  return log.every(({ seq }, index) => seq === index + 1) ? [] : ['the log has a gap or a fork'];
}

/** Every round event must be what the engine decides at that point of the log. */
function decisionViolations(log: readonly RecordedRoomEvent[], states: readonly RoomState[]): string[] {
  const violations: string[] = [];
  let due: readonly RoundEvent[] = [];
  for (const [index, { event }] of log.entries()) {
    if (event.kind !== 'round' || event.event.kind === 'dealt') {
      if (due.length > 0) violations.push(`event ${index + 1} cuts a decision in two`);
      due = [];
      continue;
    }
    const round = states[index - 1]?.play?.round;
    const command = commandOf(event.event);
    if (command !== null && round) {
      const decision = decide(round, command);
      due = decision.ok ? decision.events : [];
      if (!decision.ok) violations.push(`event ${index + 1} is unlawful: ${decision.code}`);
    }
    if (!isDeepStrictEqual(event.event, due[0])) violations.push(`event ${index + 1} was not decided`);
    due = due.slice(1);
  }
  return due.length > 0 ? [...violations, 'the log ends in the middle of a decision'] : violations;
}

function commandOf(event: RoundEvent) {
  switch (event.kind) {
    case 'submitted': {
      const { seat, step, pass } = event;
      return { kind: 'pass', seat, step, tiles: pass.tiles, blind: pass.blind, by: pass.by } as const;
    }
    case 'withdrawn':
      return { kind: 'withdraw', seat: event.seat, step: event.step, by: 'player' } as const;
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

function tileViolations(states: readonly RoomState[]): string[] {
  const set = facesOf(FULL_SET).join();
  const wrong = states.filter(({ play }) => {
    if (play === null) return false;
    const { wall } = dealTiles(play.round.deal);
    const held = play.round.racks.reduce((all, rack) => addTo(all, facesOf(rack)), bagOf(wall));
    return facesOf(held).join() !== set;
  });
  return wrong.map(({ seq }) => `after event ${seq} there are not the 152 tiles of the set`);
}

function playerViolations(player: SimulatedPlayer, scene: Evidence, states: readonly RoomState[]): string[] {
  const { name, received, holder, reviews } = player;
  const violations: string[] = [];
  const commands = new Set(commandsIn(scene));
  for (const [id, sent] of player.sent) {
    const stored = commands.has(`${holder?.since}/${id}`);
    for (const violation of commandViolations(sent, stored, scene.healed))
      violations.push(`${name}: ${violation}`);
  }
  let seen = 0;
  for (const { seq, table } of received) {
    if (seq < seen) violations.push(`${name} was told event ${seq} after event ${seen}`);
    seen = seq;
    const state = states[seq - 1];
    if (state === undefined) violations.push(`${name} was told of event ${seq}, which is not in the log`);
    else if (!isDeepStrictEqual(withoutTimeLeft(table), withoutTimeLeft(tableAt(state, scene, holder)))) {
      violations.push(`${name} was told another table of event ${seq} than may be known`);
    }
  }
  const wrongReview = reviews.some(({ review }) => review.seat !== holder?.seat);
  if (wrongReview) violations.push(`${name} was told somebody else’s review`);
  if (scene.healed && seen !== states.length) {
    violations.push(`${name} knows ${seen} events of ${states.length} at the end`);
  }
  return violations;
}

function commandViolations({ command, answers }: SentCommand, stored: boolean, healed: boolean): string[] {
  const final = answers.map(({ code }) => code).filter((code) => !RETRYABLE.includes(code));
  const acked = final.includes('ack');
  const changes = command.kind === 'choose';
  return [
    ...(acked && changes && !stored ? [`${command.id} was acknowledged and is lost`] : []),
    ...(stored && final.some((code) => code !== 'ack') ? [`${command.id} was rejected and stored`] : []),
    ...(new Set(final).size > 1 ? [`${command.id} was answered in two ways`] : []),
    ...(healed && final.length === 0 ? [`${command.id} was never answered`] : []),
  ];
}

function tableAt(
  state: RoomState,
  { code, card, absentMs }: Evidence,
  holder: SimulatedPlayer['holder'],
): Table {
  const held = holder && holderAt(state, holder);
  const facts = { code, policy: FRIENDS_TABLE, card, absentMs, stepSince: 0, now: 0 };
  return tableFor(state, facts, holder && held && { seat: holder.seat, held });
}

/** The table without the time left, which no log holds. */
function withoutTimeLeft(table: Table): Table {
  return { ...table, remaining: null };
}

/** How many events are choices: a run without choices would show nothing. */
export function choicesIn(log: readonly RecordedRoomEvent[]): number {
  return log.filter(({ event }) => event.kind === 'round' && commandOf(event.event) !== null).length;
}

/** Seats that a person holds, with the event that seated them. */
export function holdersIn(
  log: readonly RecordedRoomEvent[],
): { seat: (typeof SEATS)[number]; since: number }[] {
  const state = replayRoom(log);
  return SEATS.flatMap((seat) => {
    const held = state?.seats[seat];
    return held?.kind === 'person' ? [{ seat, since: held.since }] : [];
  });
}
