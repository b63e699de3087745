// A class as an event-sourced aggregate: its pure functions, and where loading it may begin.
import type { Aggregate, Change } from '../aggregate/aggregate.ts';
import type { AggregateType } from '../aggregate/type.ts';
import { type ClassCommand, decideClass } from './decide.ts';
import type { ClassEvent } from './event.ts';
import { beginClass, evolveClass } from './evolve.ts';
import type { ClassState } from './state.ts';
import { type ClassSnapshot, classEvents, classSnapshotFrom } from './stored-event.ts';

export type ClassAggregate = Aggregate<ClassState, ClassEvent, ClassCommand>;
export type ClassChange = Change<ClassState, ClassEvent>;

export const CLASS: AggregateType<ClassState, ClassEvent, ClassCommand> = {
  kinds: ['class', 'same-deal'],
  codec: classEvents,
  decide: decideClass,
  begin: beginClass,
  evolve: evolveClass,
  startsAnew: ({ kind }) => kind === 'dealt',
  snapshotOf: snapshotText,
  restore: (begun, text) => restored(begun, classSnapshotFrom(text)),
};

/** Where the tables are not said, every one of them has a player; where deals went home before is not, they do now or never did. */
function restored(begun: ClassState, snapshot: ClassSnapshot): ClassState {
  const rooms = snapshot.players.map(({ room }) => room);
  const takeHome = snapshot.takeHome ?? begun.takeHome;
  const wasTakenHome = snapshot.wasTakenHome ?? (takeHome || begun.wasTakenHome);
  return { ...begun, ...snapshot, wasTakenHome, tables: snapshot.tables ?? [...new Set(rooms)] };
}

function snapshotText({ drill, deals, terms, card, secretHash, ...rest }: ClassState): string {
  const snapshot: ClassSnapshot = rest;
  return JSON.stringify(snapshot);
}
