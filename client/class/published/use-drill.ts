// A published drill on this device: fetched when there is a network, played without one, sent when there is one again.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { PublishedDrill, SendRound } from '../../../shared-engine/index.ts';
import type { Failure } from '../../connection/api.ts';
import { randomHex } from '../../connection/random.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import {
  type DrillOnDevice,
  type PlayedRound,
  readDrillOnDevice,
  storeDrillOnDevice,
} from '../../storage/published.ts';
import { takeKey } from '../keys/teacher-key.ts';
import { bringDrillKey, fetchDrill, fetchReleased, sendRound } from './requests.ts';

/** Pause before rounds that wait are sent again, in milliseconds. */
const RETRY_MS = 15_000;
/** Answers after which the same round may be sent again. */
const FOR_LATER = ['unreachable', 'try-later', 'busy', 'too-fast'];

export type DrillModel = ReturnType<typeof useDrill>;

export function useDrill(code: string, name: () => string) {
  const device = useSignal<DrillOnDevice | null>(
    useMemo(() => readDrillOnDevice(lastingStorage, code), [code]),
  );
  const failure = useSignal<Failure | null>(null);
  const isStored = useSignal(true);
  const sending = useSignal(false);

  const change = (next: DrillOnDevice) => {
    device.value = next;
    isStored.value = storeDrillOnDevice(lastingStorage, next);
  };
  const freshRound = (): PlayedRound => {
    return { id: randomHex(12), answers: [], questions: [], state: 'playing', message: null };
  };
  const changeRound = (deal: string, part: Partial<PlayedRound>) => {
    const now = device.peek();
    if (now === null) return;
    change({ ...now, rounds: { ...now.rounds, [deal]: { ...(now.rounds[deal] ?? freshRound()), ...part } } });
  };

  async function load(key: string | null = null) {
    const brought = key === null ? null : await bringDrillKey(code, key);
    const answer = brought === null || brought.ok ? await fetchDrill(code) : brought;
    failure.value = answer.ok ? null : answer;
    if (!answer.ok) return;
    takeOver(answer.value);
    await send();
    await compare();
  }

  /** What has been fetched before stays playable, also when the drill is over. */
  function takeOver(drill: PublishedDrill) {
    const now = device.peek();
    const kept = drill.deals.length > 0 ? drill : { ...drill, deals: now?.drill.deals ?? [] };
    change({ rounds: {}, released: [], ...now, drill: kept });
  }

  async function compare() {
    const answer = await fetchReleased(code);
    const now = device.peek();
    if (answer.ok && now !== null) change({ ...now, released: answer.value.deals });
  }

  async function send() {
    if (sending.peek()) return;
    sending.value = true;
    for (const [deal, round] of Object.entries(device.peek()?.rounds ?? {})) {
      if (round.state === 'waiting') await sendOne(deal, round);
    }
    sending.value = false;
  }

  async function sendOne(deal: string, { id, answers, questions }: PlayedRound) {
    const named = device.peek()?.drill.terms.names === true;
    const sent: SendRound = { id, deal, choices: answers, questions, ...(named && { name: name() }) };
    const answer = await sendRound(code, sent);
    const now = device.peek();
    if (now === null) return;
    if (answer.ok) {
      const { counted, released } = answer.value;
      change({ ...now, released: [...now.released.filter((one) => one.deal !== deal), released] });
      return changeRound(deal, { state: counted ? 'counted' : 'practice' });
    }
    if (answer.code === 'unreachable') failure.value = answer;
    if (!FOR_LATER.includes(answer.code)) changeRound(deal, { state: 'rejected', message: answer.message });
  }

  useEffect(() => {
    const again = () => void load();
    void load(takeKey(window.location, window.history));
    const timer = setInterval(() => {
      const waits = Object.values(device.peek()?.rounds ?? {}).some(({ state }) => state === 'waiting');
      if (waits) again();
    }, RETRY_MS);
    window.addEventListener('online', again);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', again);
    };
  }, [code]);

  return {
    device,
    failure,
    isStored,
    changeRound,
    /** A round that was rejected is played anew, and may count. */
    startAnew: (deal: string) => changeRound(deal, freshRound()),
    load: () => void load(),
  };
}
