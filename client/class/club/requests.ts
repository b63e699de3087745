// What the page asks of the server about a club's page.
import {
  CLUBS_PATH,
  type ClubAction,
  clubMadeSchema,
  clubPageSchema,
  clubPath,
  teacherKeySchema,
} from '../../../shared-engine/index.ts';
import { type ApiResult, call, existence } from '../../connection/api.ts';
import type { Schema } from '../../connection/frame.ts';

/** The body of a successful answer is not needed. */
const ignored: Schema<null> = { safeParse: () => ({ success: true, data: null }) };

export function makeClub(name: string) {
  return call(CLUBS_PATH, { name }, clubMadeSchema);
}

export function fetchClub(code: string) {
  return call(clubPath(code), null, clubPageSchema, { method: 'GET' });
}

export async function clubExists(code: string): Promise<ApiResult<boolean>> {
  return existence(await fetchClub(code), 'no-such-club');
}

export function sendClubAction(code: string, action: ClubAction) {
  return call(clubPath(code, 'actions'), action, ignored);
}

export function makeClubKey(code: string) {
  return call(clubPath(code, 'keys'), {}, teacherKeySchema);
}

export function bringClubKey(code: string, key: string) {
  return call(clubPath(code, 'teacher'), { key }, ignored);
}

export function deleteClub(code: string) {
  return call(clubPath(code), null, ignored, { method: 'DELETE' });
}
