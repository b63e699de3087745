// Personal data in a room and in a class: to read, and to have deleted.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { CLASSES_PATH, ROOMS_PATH } from '../../shared-engine/index.ts';
import { recordedIn } from '../aggregate/recorded.ts';
import type { ActiveClass } from '../class/active-class.ts';
import type { Classes } from '../class/classes.ts';
import { forgetPlayer, playerDataOf } from '../class/personal-data.ts';
import type { ClassPlayer } from '../class/state.ts';
import type { Store } from '../ports.ts';
import type { ActiveRoom } from '../registry/active-room.ts';
import type { Registry } from '../registry/registry.ts';
import type { SeatHolder } from '../room/command.ts';
import { forgetName, forgetPerson, type PersonalDataEntry, personalDataOf } from '../room/personal-data.ts';
import { roomEvents } from '../room/stored-event.ts';
import { parseCode } from '../room-code.ts';
import {
  anyPlayerOf,
  type Bearer,
  bearerOf,
  clearClassCookies,
  clearSeatCookie,
  hasPlayerCookie,
  isTeacher,
} from './cookies.ts';
import { rejectWith, sendRejection } from './rejections.ts';

interface RoomPorts {
  readonly registry: Registry;
  readonly store: Pick<Store, 'history' | 'rewrite'>;
}

interface ClassPorts {
  readonly classes: Classes;
  readonly store: Pick<Store, 'history' | 'rewrite'>;
}

type WithCode = { Params: { code: string } };

export function roomPersonalDataRoutes(app: FastifyInstance, { registry, store }: RoomPorts): void {
  const path = `${ROOMS_PATH}/:code/personal-data`;

  app.get<WithCode>(path, async (request, reply) => {
    const found = await seatOf(request);
    if (typeof found === 'string') return rejectWith(reply, found);
    const { live, bearer } = found;
    const { code } = live.room;
    const entries = await roomEntries(store, code, bearer.holder);
    return asDownload(reply, { code, seat: bearer.holder.seat, entries });
  });

  app.delete<WithCode>(path, async (request, reply) => {
    const found = await seatOf(request);
    if (typeof found === 'string') return rejectWith(reply, found);
    const { live, bearer } = found;
    const { holder } = bearer;
    const { code } = live.room;
    // The name first: should anything fail behind it, the person can ask again.
    await forgetName(store, code, holder);
    const answer = await live.room.submit({ kind: 'action', holder, action: { kind: 'leave' } });
    if (!answer.ok) return sendRejection(reply, answer);
    await forgetPerson(store, code, holder);
    clearSeatCookie(reply, code);
    return reply.code(204).send();
  });

  /** The records of a class belong to its teacher's report and go with the class. */
  async function seatOf(request: FastifyRequest<WithCode>): Promise<Found | 'no-such-room' | 'not-seated'> {
    const code = parseCode(request.params.code);
    const live = code === null ? null : await registry.find(code);
    if (!live?.policy.isOpen) return 'no-such-room';
    const bearer = bearerOf(request, live.room.state);
    return bearer === null ? 'not-seated' : { live, bearer };
  }
}

interface Found {
  readonly live: ActiveRoom;
  readonly bearer: Bearer;
}

/**
 * A player reads and deletes what is stored of the player; the teacher deletes the whole class. Who is both asks twice
 * sometimes, after a second tap or a lost answer: neither path removes a class for a browser that still plays in it.
 */
export function classPersonalDataRoutes(app: FastifyInstance, { classes, store }: ClassPorts): void {
  const path = `${CLASSES_PATH}/:code/personal-data`;

  app.get<WithCode>(path, async (request, reply) => {
    const live = await classAt(request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    const player = anyPlayerOf(request, live.state);
    if (player === null && !isTeacher(request, live.state)) return rejectWith(reply, 'not-seated');
    // Told what is the teacher's, the browser may delete the class: a player's cookie that is nobody's is in the way.
    if (player === null && hasPlayerCookie(request)) clearClassCookies(reply, live.code, ['player']);
    const entries = player ? await playerEntries(store, live, player) : await teacherEntries(store, live);
    return asDownload(reply, { code: live.code, entries });
  });

  app.delete<WithCode>(path, async (request, reply) => {
    const live = await classAt(request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    const player = anyPlayerOf(request, live.state);
    if (player) return deletePlayer(store, live, player, reply);
    if (!isTeacher(request, live.state) || hasPlayerCookie(request)) return rejectWith(reply, 'not-seated');
    await classes.remove(live);
    clearClassCookies(reply, live.code);
    return reply.code(204).send();
  });

  app.delete<WithCode>(`${path}/player`, async (request, reply) => {
    const live = await classAt(request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    const player = anyPlayerOf(request, live.state);
    if (player) return deletePlayer(store, live, player, reply);
    if (!isTeacher(request, live.state) && !hasPlayerCookie(request)) return rejectWith(reply, 'not-seated');
    clearClassCookies(reply, live.code, ['player']);
    return reply.code(204).send();
  });

  async function classAt({ params }: FastifyRequest<WithCode>): Promise<ActiveClass | null> {
    const code = parseCode(params.code);
    return code === null ? null : classes.find(code);
  }
}

type History = Pick<Store, 'history'>;

function asDownload<T>(reply: FastifyReply, data: T): T {
  reply.header('content-disposition', 'attachment; filename="quadrille-personal-data.json"');
  return data;
}

async function roomEntries(store: History, code: string, holder: SeatHolder): Promise<PersonalDataEntry[]> {
  const log = await store.history(code);
  return personalDataOf(log?.rows.flatMap((row) => recordedIn(row, roomEvents)) ?? [], holder);
}

async function playerEntries(
  store: History,
  live: ActiveClass,
  player: ClassPlayer,
): Promise<PersonalDataEntry[]> {
  const holder = await holderOf(store, live, player);
  const inClass = await store.history(live.code);
  const atTable = holder ? await roomEntries(store, player.room, holder) : [];
  return [...(inClass ? playerDataOf(inClass, player.id) : []), ...atTable].sort((a, b) => a.at - b.at);
}

async function teacherEntries(store: History, { code, state }: ActiveClass): Promise<PersonalDataEntry[]> {
  const [opened] = (await store.history(code))?.rows ?? [];
  const { drill, terms } = state;
  return opened ? [{ at: opened.at, what: 'opened the class', drill, terms }] : [];
}

/** Names first: should anything fail behind that, the player can ask again. */
async function deletePlayer(
  store: Pick<Store, 'history' | 'rewrite'>,
  live: ActiveClass,
  player: ClassPlayer,
  reply: FastifyReply,
) {
  const holder = await holderOf(store, live, player);
  if (holder) await forgetName(store, player.room, holder);
  await live.vacateSeat(player);
  const left = await live.submit({ kind: 'leave', player: player.id });
  if (!left.ok) return sendRejection(reply, left);
  await forgetPlayer(store, live.code, player.id);
  if (holder) await forgetPerson(store, player.room, holder);
  // Who leads the class as well goes on leading it.
  clearClassCookies(reply, live.code, ['player']);
  clearSeatCookie(reply, player.room);
  return reply.code(204).send();
}

/** Null where the player has had everything deleted already. */
async function holderOf(
  store: History,
  { tables, state }: ActiveClass,
  { id, room, seat, seatedAs, left, removed }: ClassPlayer,
): Promise<SeatHolder | null> {
  if (!left) {
    const at = tables.at(room)?.live.room.state.seats[seat];
    return at?.kind === 'person' ? { seat, since: at.since } : null;
  }
  if (!removed) return null;
  // Somebody else may have the place by now, even under the same name: they sat down in the order in which they joined.
  const before = state.players.filter(
    (one) => one.room === room && one.seat === seat && one.seatedAs === seatedAs,
  );
  const log = await store.history(room);
  const stays = (log?.rows ?? [])
    .flatMap((row) => recordedIn(row, roomEvents))
    .filter(({ event }) => event.kind === 'seat-taken' && event.seat === seat && event.name === seatedAs);
  const stay = stays[before.findIndex((one) => one.id === id)];
  return stay ? { seat, since: stay.seq } : null;
}
