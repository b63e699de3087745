// Asks the server for the data stored about this person, and to delete it.
import { httpRejectionSchema, personalDataSchema } from '../../shared-engine/index.ts';
import { type ApiResult, call } from '../connection/api.ts';

export function readPersonalData(path: string) {
  return call(path, null, personalDataSchema, { method: 'GET' });
}

export async function deletePersonalData(path: string): Promise<ApiResult<null>> {
  const failed = {
    ok: false,
    code: 'unreachable',
    message: 'That did not reach the server. Try again.',
  } as const;
  try {
    const response = await fetch(path, { method: 'DELETE', credentials: 'same-origin' });
    if (response.ok) return { ok: true, value: null };
    const rejection = httpRejectionSchema.safeParse(await response.json());
    return rejection.success ? { ok: false, ...rejection.data } : failed;
  } catch {
    return failed;
  }
}
