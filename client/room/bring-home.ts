// Brings the deals of a class to the device of a player who may play them again at home (rules TH2 and TH3).
import { classInfoSchema, classPath, takenHomeSchema } from '../../shared-engine/index.ts';
import { call } from '../connection/api.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { homeDeal, readHome, storeHome } from '../storage/taken-home.ts';

const GET = { method: 'GET' } as const;

/** Whether the deal of this round at this table of a class is on the device; asks the server for what is not. */
export async function bringHome(room: string, round: number): Promise<boolean> {
  const isHere = () => homeDeal(lastingStorage, room, round) !== null;
  if (isHere()) return true;
  const home = readHome(lastingStorage, room);
  if (home === null) return false;
  const info = await call(classPath(home.code), null, classInfoSchema, GET);
  if (!info.ok || !info.value.player?.home.includes(round)) return false;
  const taken = await call(classPath(home.code, 'deals'), null, takenHomeSchema, GET);
  return taken.ok && storeHome(lastingStorage, taken.value) && isHere();
}
