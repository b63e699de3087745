// One's own data in a class: a pupil reads what is kept and has it forgotten; the teacher has the whole class forgotten.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { CLASSES_PATH } from '../../shared-engine/index.ts';
import type { Classes } from '../class/classes.ts';
import type { LiveClass } from '../class/live-class.ts';
import { keptOfPupil, withoutPupil } from '../class/mine.ts';
import type { Pupil } from '../class/state.ts';
import type { Store } from '../ports.ts';
import { parseCode } from '../room/code.ts';
import type { Owner } from '../room/command.ts';
import { type KeptEntry, keptOf, keyless, nameless } from '../room/mine.ts';
import { isTeacher, pupilOf, takeClassSecrets } from './class-cookie.ts';
import { passOn, refuseWith } from './refusals.ts';
import { takeSecret } from './seat-cookie.ts';

interface Ports {
  readonly classes: Classes;
  readonly store: Store;
}

type AtClass = { Params: { code: string } };

export function classMineRoutes(app: FastifyInstance, { classes, store }: Ports): void {
  const path = `${CLASSES_PATH}/:code/mine`;

  app.get<AtClass>(path, async (request, reply) => {
    const live = await classAt(request);
    if (live === null) return refuseWith(reply, 'no-such-class');
    const pupil = pupilOf(request, live.state);
    if (pupil === null && !isTeacher(request, live.state)) return refuseWith(reply, 'not-seated');
    const kept = pupil ? await keptOfBoth(live, pupil) : await keptOfTeacher(live);
    reply.header('content-disposition', 'attachment; filename="quadrille-mine.json"');
    return { code: live.code, kept };
  });

  app.delete<AtClass>(path, async (request, reply) => {
    const live = await classAt(request);
    if (live === null) return refuseWith(reply, 'no-such-class');
    const pupil = pupilOf(request, live.state);
    if (pupil) return forget(live, pupil, reply);
    if (!isTeacher(request, live.state)) return refuseWith(reply, 'not-seated');
    await classes.remove(live);
    takeClassSecrets(reply, live.code);
    return reply.code(204).send();
  });

  async function classAt({ params }: FastifyRequest<AtClass>): Promise<LiveClass | null> {
    const code = parseCode(params.code);
    return code === null ? null : classes.find(code);
  }

  async function keptOfBoth(live: LiveClass, pupil: Pupil): Promise<KeptEntry[]> {
    const [inClass, atTable] = await Promise.all([store.load(live.code), store.load(pupil.room)]);
    const owner = ownerOf(live, pupil);
    return [...keptOfPupil(inClass ?? [], pupil.id), ...(owner ? keptOf(atTable ?? [], owner) : [])].sort(
      (a, b) => a.at - b.at,
    );
  }

  async function keptOfTeacher({ code, state }: LiveClass): Promise<KeptEntry[]> {
    const [opened] = (await store.load(code)) ?? [];
    const { drill, terms } = state;
    return opened ? [{ at: opened.at, what: 'opened the class', drill, terms }] : [];
  }

  /** Names first: should anything fail behind that, the pupil can ask again. */
  async function forget(live: LiveClass, pupil: Pupil, reply: FastifyReply) {
    const owner = ownerOf(live, pupil);
    const table = (await store.load(pupil.room)) ?? [];
    if (owner) await store.amend(pupil.room, nameless(table, owner));
    await live.freeSeat(pupil);
    const left = await live.submit({ kind: 'leave', pupil: pupil.id });
    if (!left.ok) return passOn(reply, left);
    await store.amend(live.code, withoutPupil((await store.load(live.code)) ?? [], pupil.id));
    if (owner) await store.amend(pupil.room, keyless((await store.load(pupil.room)) ?? [], owner));
    takeClassSecrets(reply, live.code);
    takeSecret(reply, pupil.room);
    return reply.code(204).send();
  }
}

/** Null where the seat at the table is given up already. */
function ownerOf({ tables }: LiveClass, { room, seat }: Pupil): Owner | null {
  const chair = tables.at(room)?.live.room.state.chairs[seat];
  return chair?.kind === 'person' ? { seat, since: chair.since } : null;
}
