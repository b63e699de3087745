// What is handed out of a class's drill: all of it to a teacher as a file, and to a player the deals that are over.
import type { FastifyInstance } from 'fastify';
import { CLASSES_PATH, drillFileText } from '../../shared-engine/index.ts';
import type { Classes } from '../class/classes.ts';
import type { ClassState } from '../class/state.ts';
import { takenHomeFor } from '../class/take-home.ts';
import { type AtClass, classAt } from './classes.ts';
import { isTeacher, playerOf } from './cookies.ts';
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

  app.get<AtClass>(`${CLASSES_PATH}/:code/deals`, async (request, reply) => {
    const live = await classAt(classes, request);
    const player = live && playerOf(request, live.state);
    if (live === null || player === null) return rejectWith(reply, 'no-such-class');
    return live.state.takeHome ? takenHomeFor(live, player) : rejectWith(reply, 'deals-not-given');
  });
}

function drillFileOf({ drill, card, terms, takeHome }: ClassState): string {
  const { amongFriends: _, takeHome: __, ...asOpened } = terms;
  // As the switch stands now.
  const asClass = { ...asOpened, ...(takeHome && { takeHome }) };
  return drillFileText({ drill, card: card.kind === 'house' ? 'house' : card.file, class: asClass });
}
