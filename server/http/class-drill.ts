// The drill of a class as a file: a teacher who came with a key saves it, copies it and runs it again like the first one.
import type { FastifyInstance } from 'fastify';
import { CLASSES_PATH, drillFileText } from '../../shared-engine/index.ts';
import type { Classes } from '../class/classes.ts';
import type { ClassState } from '../class/state.ts';
import { type AtClass, classAt } from './classes.ts';
import { isTeacher } from './cookies.ts';
import { rejectWith } from './rejections.ts';

export function classDrillRoutes(app: FastifyInstance, { classes }: { readonly classes: Classes }): void {
  app.get<AtClass>(`${CLASSES_PATH}/:code/drill`, async (request, reply) => {
    const live = await classAt(classes, request);
    if (live === null) return rejectWith(reply, 'no-such-class');
    // Friends who play one deal have a class without a teacher, whose deal nobody is shown beforehand.
    if (live.state.terms.amongFriends || !isTeacher(request, live.state))
      return rejectWith(reply, 'not-the-teacher');
    return reply.type('application/json').send(drillFileOf(live.state));
  });
}

function drillFileOf({ drill, card, terms }: ClassState): string {
  const { amongFriends: _, ...asClass } = terms;
  return drillFileText({ drill, card: card.kind === 'house' ? 'house' : card.file, class: asClass });
}
