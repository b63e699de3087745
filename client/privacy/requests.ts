// Asks the server what it keeps of this person, and to forget it.
import { httpRefusalSchema, keptSchema } from '../../shared-engine/index.ts';
import { type Answered, call } from '../connection/api.ts';

export function readKept(path: string) {
  return call(path, null, keptSchema, 'GET');
}

export async function forgetKept(path: string): Promise<Answered<null>> {
  const failed = {
    ok: false,
    code: 'unreachable',
    sentence: 'That did not reach the server; try again.',
  } as const;
  try {
    const response = await fetch(path, { method: 'DELETE', credentials: 'same-origin' });
    if (response.ok) return { ok: true, value: null };
    const refusal = httpRefusalSchema.safeParse(await response.json());
    return refusal.success ? { ok: false, ...refusal.data } : failed;
  } catch {
    return failed;
  }
}
