// A published drill on this device: fetched when there is a network, played without one, sent when there is one again.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { SendRound } from '../../../shared-engine/index.ts';
import type { Failure } from '../../connection/api.ts';
import { lastingStorage, onOtherTabs } from '../../storage/browser-storage.ts';
import {
  changeDrill,
  type DrillOnDevice,
  drillKey,
  type PlayedRound,
  readDrillOnDevice,
} from '../../storage/published.ts';
import { takeKey } from '../keys/teacher-key.ts';
import { bringDrillKey, fetchDrill, fetchReleased, sendRound } from './requests.ts';
import {
  answered,
  begunAnew,
  isForLater,
  isSendingDue,
  playedOn,
  repaired,
  roundsToSend,
  takenOver,
} from './rounds.ts';

/** Pause before rounds that wait are sent again, in milliseconds. */
const RETRY_MS = 15_000;
export type DrillModel = ReturnType<typeof useDrill>;

export function useDrill(code: string, name: () => string) {
  const device = useSignal<DrillOnDevice | null>(
    useMemo(() => readDrillOnDevice(lastingStorage, code), [code]),
  );
  const failure = useSignal<Failure | null>(null);
  const isStored = useSignal(true);
  const isDeleted = useRef(false);
  const sending = useSignal(false);

  const change = (step: (now: DrillOnDevice | null) => DrillOnDevice | null) => {
    const tab = { code, device: device.peek(), isStored: isStored.peek(), isDeleted: isDeleted.current };
    const next = changeDrill(lastingStorage, tab, step);
    device.value = next.device;
    isStored.value = next.isStored;
    isDeleted.current = next.isDeleted;
  };
  const changeKnown = (step: (now: DrillOnDevice) => DrillOnDevice) => change((now) => now && step(now));

  async function load(key: string | null = null) {
    const brought = key === null ? null : await bringDrillKey(code, key);
    const answer = brought === null || brought.ok ? await fetchDrill(code) : brought;
    failure.value = answer.ok ? null : answer;
    if (!answer.ok) return;
    change((now) => takenOver(now, answer.value));
    await send();
    await compare();
  }

  async function compare() {
    const answer = await fetchReleased(code);
    if (answer.ok) changeKnown((now) => ({ ...now, released: answer.value.deals }));
  }

  async function send() {
    const now = device.peek();
    if (sending.peek() || now === null) return;
    sending.value = true;
    for (const [deal, round] of roundsToSend(now)) await sendOne(deal, round);
    sending.value = false;
  }

  async function sendOne(deal: string, { id, answers, questions }: PlayedRound) {
    const named = device.peek()?.drill.terms.names === true;
    const sent: SendRound = { id, deal, choices: answers, questions, ...(named && { name: name() }) };
    const answer = await sendRound(code, sent);
    if (!answer.ok && answer.code === 'unreachable') failure.value = answer;
    changeKnown((now) => answered(now, sent, answer));
  }

  useEffect(() => {
    const again = () => void load();
    void load(takeKey(window.location, window.history));
    const timer = setInterval(() => {
      const now = device.peek();
      const failed = failure.peek();
      if ((now !== null && isSendingDue(now)) || (failed !== null && isForLater(failed.code))) again();
    }, RETRY_MS);
    const ends = onOtherTabs(drillKey(code), () => {
      device.value = readDrillOnDevice(lastingStorage, code) ?? device.peek();
    });
    window.addEventListener('online', again);
    return () => {
      clearInterval(timer);
      ends();
      window.removeEventListener('online', again);
    };
  }, [code]);

  return {
    device,
    failure,
    isStored,
    /** What the player did at the table of a deal. */
    play: (deal: string, part: Parameters<typeof playedOn>[2]) =>
      changeKnown((now) => playedOn(now, deal, part)),
    startAnew: (deal: string) => changeKnown((now) => begunAnew(now, deal)),
    /** Sends a round again that waits for another name or other questions. */
    sendRepaired: (deal: string, questions: PlayedRound['questions']) => {
      changeKnown((now) => repaired(now, deal, questions));
      void load();
    },
    load: () => void load(),
  };
}
