// Makes one table as its class wants it: the teacher's controls, the steps of a guided deal, the next deal.
import { botsAround, rotatedScript, SEATS, type Seat } from '../../shared-engine/index.ts';
import { ACCEPTED, type Answer } from '../aggregate/decision.ts';
import { errorFacts, type Log } from '../log.ts';
import { isRoundRunning, personsOf, type RoomState } from '../room/state.ts';
import type { TeacherControls } from '../room/teacher-controls.ts';
import { type ClassState, isGuided } from './state.ts';
import type { ClassTable, Tables } from './tables.ts';

export interface ReconciledClass {
  /** The present state: it may change while a table is updated. */
  state(): ClassState;
  readonly tables: Tables;
  readonly log: Log;
}

/** Whether the table is now as the class wants it; if not, it can be tried again. Never rejects. */
export async function reconcileTable(
  { state, tables, log }: ReconciledClass,
  code: string,
  called: boolean,
): Promise<boolean> {
  try {
    const table = await tables.find(code);
    if (table === null) return true;
    const { room } = table.live;
    const guided = !state().ended && isGuided(state());
    const controlled = await room.submit({ kind: 'set-controls', controls: controlsOf(state(), code) });
    if (!controlled.ok) return false;
    const before = guided ? await advance(table, state()) : controlled;
    // In a guided class everybody waits for each table, so none may wait for an absent player to ask for the deal.
    const asked = called || guided || wantsDeal(room.state);
    const dealt = asked ? await dealNext(table, state()) : controlled;
    const after = guided ? await advance(table, state()) : controlled;
    return before.ok && dealt.ok && after.ok;
  } catch (error) {
    log.warn(errorFacts(error), 'a table of a class could not be told');
    return false;
  }
}

/** A table that has had no deal, or whose players have all asked for the next one. */
export function wantsDeal(state: RoomState): boolean {
  if (state.play === null) return true;
  return !isRoundRunning(state) && personsOf(state).every(({ ready }) => ready);
}

function controlsOf(state: ClassState, code: string): TeacherControls {
  const { ended, holdBefore, terms } = state;
  return {
    holdBefore: ended ? null : holdBefore,
    standIn: standInsAt(state, code),
    ...(!ended && isGuided(state) && { guided: true }),
    ...(terms.cardClosed && { cardClosed: true }),
    ...(terms.coach && { coach: true }),
    ...(ended && { classOver: true }),
    ...(terms.amongFriends && { amongFriends: true }),
  };
}

/** The next deal that this table has not had, once the one before is closed. */
async function dealNext({ live: { room } }: ClassTable, state: ClassState): Promise<Answer> {
  const { players, deals, dealt, drill, ended } = state;
  const first = players.find((player) => player.room === room.code)?.first;
  if (first === undefined || ended || isRoundRunning(room.state)) return ACCEPTED;
  const next = first + (room.state.play?.number ?? 0);
  const deal = deals[next];
  if (deal === undefined || next >= dealt) return ACCEPTED;
  const bots = botsAround(0, drill.bots);
  const script = rotatedScript(drill.deals[next]!);
  return room.submit({ kind: 'deal-prepared', deal, bots, script }, `class/deal ${next}`);
}

/** Advances the table to where the class is in its deal, or to the close if the class has closed that deal. */
async function advance({ live: { room } }: ClassTable, state: ClassState): Promise<Answer> {
  const { players, dealt, dealClosed, outcomesBefore } = state;
  const player = players.find(({ room: code }) => code === room.code);
  const { play } = room.state;
  if (!player || !play) return ACCEPTED;
  const deal = player.first + play.number - 1;
  const before = outcomesBefore[deal];
  const outcomes = before ?? (deal === dealt - 1 ? state.outcomes : []);
  if ((play.round.actualSteps?.length ?? 0) >= outcomes.length) return ACCEPTED;
  const closed = before !== undefined || dealClosed;
  return room.submit({ kind: 'advance', round: play.number, outcomes, closed });
}

function standInsAt({ players }: ClassState, code: string): Seat[] {
  const replaced = players.filter(({ room, standIn }) => room === code && standIn);
  return SEATS.filter((seat) => replaced.some((player) => player.seat === seat));
}
