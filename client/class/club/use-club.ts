// The page of a club: what was told last is there at once, and it is asked for anew as long as somebody looks.
import { type Signal, useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { ClubAction, ClubPage } from '../../../shared-engine/index.ts';
import type { ApiResult, Failure } from '../../connection/api.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { forgetClub, readClub, storeClub } from '../../storage/clubs.ts';
import { takeKey } from '../keys/teacher-key.ts';
import { ClubReader } from './club-reader.ts';
import { bringClubKey, fetchClub, sendClubAction } from './requests.ts';

/** Pause before the page is asked for again, in milliseconds. */
const AGAIN_MS = 20_000;

export interface ClubModel {
  readonly page: Signal<ClubPage | null>;
  /** Why the page was not told just now. */
  readonly failure: Signal<Failure | null>;
  /** Why something was not changed, or a key was not taken. */
  readonly rejected: Signal<string | null>;
  act(action: ClubAction): void;
}

export function useClub(code: string): ClubModel {
  const page = useSignal(useMemo(() => readClub(lastingStorage, code), [code]));
  const failure = useSignal<Failure | null>(null);
  const rejected = useSignal<string | null>(null);

  const reader = useMemo(
    () =>
      new ClubReader(
        {
          bring: (key) => bringClubKey(code, key),
          fetch: () => fetchClub(code),
          told,
          keyFailed: ({ message }) => {
            rejected.value = message;
          },
        },
        takeKey(window.location, window.history),
      ),
    [code],
  );

  function told(answer: ApiResult<ClubPage>) {
    failure.value = answer.ok ? null : answer;
    if (answer.ok) {
      page.value = answer.value;
      storeClub(lastingStorage, answer.value);
    } else if (answer.code === 'no-such-club') {
      page.value = null;
      forgetClub(lastingStorage, code);
    }
  }

  async function act(action: ClubAction) {
    const answer = await sendClubAction(code, action);
    rejected.value = answer.ok ? null : answer.message;
    await reader.read();
  }

  useEffect(() => {
    void reader.read();
    const again = () => {
      if (document.visibilityState === 'visible') void reader.read();
    };
    const timer = setInterval(again, AGAIN_MS);
    window.addEventListener('online', again);
    document.addEventListener('visibilitychange', again);
    return () => {
      reader.end();
      clearInterval(timer);
      window.removeEventListener('online', again);
      document.removeEventListener('visibilitychange', again);
    };
  }, [reader]);

  return { page, failure, rejected, act: (action) => void act(action) };
}
