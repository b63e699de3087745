// The data of one device in a published drill's log: shown to it, and deleted from the log on demand.
import type { Answer } from '../aggregate/decision.ts';
import { type Recorded, recordedIn } from '../aggregate/recorded.ts';
import { rewriteLog } from '../aggregate/rewrite.ts';
import type { Store } from '../ports.ts';
import type { PersonalDataEntry } from '../room/personal-data.ts';
import type { ActiveDrill } from './active-drill.ts';
import type { PublishedEvent } from './event.ts';
import { publishedEvents, publishedSnapshotFrom } from './stored-event.ts';

/** Stands where a device was named. */
const NOBODY = '0'.repeat(32);

/** Everything that is stored of this device, oldest first. */
export async function deviceData(
  store: Pick<Store, 'history'>,
  { code, state }: Pick<ActiveDrill, 'code' | 'state'>,
  player: string,
): Promise<PersonalDataEntry[]> {
  const log = await store.history(code);
  const recorded = (log?.rows ?? []).flatMap((row) => recordedIn(row, publishedEvents));
  return recorded.flatMap(({ at, event }): PersonalDataEntry[] => {
    if (event.kind !== 'counted' || event.player !== player) return [];
    const { choices, questions = [], name = null } = event;
    const deal = state.drill.deals[event.deal]?.id ?? null;
    return [{ at, what: 'a round was counted', deal, choices, questions, name }];
  });
}

/** Takes the device and its name out of the log; its choices stay in the counts, as nobody's. */
export async function forgetDevice(
  store: Pick<Store, 'history' | 'rewrite'>,
  live: ActiveDrill,
  player: string,
): Promise<Answer> {
  const forgotten = await live.submit({ kind: 'forget', player });
  if (!forgotten.ok) return forgotten;
  await rewriteLog(store, live.code, {
    codec: publishedEvents,
    changed: (recorded) => recorded.flatMap((one) => withoutDevice(one, player)),
    snapshot: (text) => JSON.stringify(withoutDeviceIn(text, player)),
  });
  return forgotten;
}

function withoutDevice(
  { event, ...at }: Recorded<PublishedEvent>,
  player: string,
): Recorded<PublishedEvent>[] {
  if (event.kind === 'forgotten' && event.player === player)
    return [{ ...at, event: { ...event, player: NOBODY } }];
  if (event.kind !== 'counted' || event.player !== player) return [];
  const { name: _, ...counted } = event;
  return [{ ...at, event: { ...counted, player: NOBODY } }];
}

function withoutDeviceIn(text: string, player: string) {
  const state = publishedSnapshotFrom(text);
  const without = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(record).filter(([key]) => key !== player));
  const players = Object.fromEntries(Object.entries(state.players).map(([at, some]) => [at, without(some)]));
  return { ...state, players, byDeal: state.byDeal.map((deal) => ({ ...deal, names: without(deal.names) })) };
}
