// Brings the deals of a class to the device of a player who may play them again at home (rules TH2 and TH3).
import { type ClassInfo, classInfoSchema, classPath, takenHomeSchema } from '../../shared-engine/index.ts';
import { call } from '../connection/api.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { homeDeal, readHome, storeHome } from '../storage/taken-home.ts';

const GET = { method: 'GET' } as const;

/** Whether a deal is on the device, may come if the class is asked again, or does not come as things stand. */
export type Brought = 'here' | 'later' | 'no';

/** Asks the server for the deal of this round at this table of a class, unless it is on the device. */
export async function bringHome(room: string, round: number): Promise<Brought> {
  const isHere = () => homeDeal(lastingStorage, room, round) !== null;
  if (isHere()) return 'here';
  const home = readHome(lastingStorage, room);
  if (home === null) return 'no';
  const info = await call(classPath(home.code), null, classInfoSchema, GET);
  if (!info.ok) return info.code === 'no-such-class' ? 'no' : 'later';
  if (!info.value.player?.home.includes(round)) return mayCome(info.value) ? 'later' : 'no';
  const taken = await call(classPath(home.code, 'deals'), null, takenHomeSchema, GET);
  if (!taken.ok) return 'later';
  // A browser that stores nothing of it would do so at no other time either.
  return storeHome(lastingStorage, taken.value) && isHere() ? 'here' : 'no';
}

/** Whether a deal that is not sent yet waits for nothing but the others’ play. */
export function mayCome({
  takeHome,
  ended,
  player,
}: Pick<ClassInfo, 'takeHome' | 'ended' | 'player'>): boolean {
  return takeHome && !ended && player !== null;
}
