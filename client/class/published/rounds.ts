// What becomes of a drill on this device: taken over from the server, played, sent, and answered.
import type { PublishedDrill, RoundSent, SendRound } from '../../../shared-engine/index.ts';
import type { ApiResult, Failure } from '../../connection/api.ts';
import { randomHex } from '../../connection/random.ts';
import type { DrillOnDevice, PlayedRound } from '../../storage/published.ts';
import { DRILL } from './strings.ts';

/** Answers after which the same may be asked again by itself. */
const FOR_LATER: readonly string[] = ['unreachable', 'unclear', 'try-later', 'busy', 'too-fast'];
/** Answers that judge the round itself; after any other one it may still be counted. */
const FINAL: readonly string[] = ['round-not-played', 'drill-full'];

/** Whether there is no such drill any more; after any other failure what is on this device stays playable. */
export function isGone(failure: Failure | null): boolean {
  return failure?.code === 'no-such-drill';
}

export function isForLater(code: string): boolean {
  return FOR_LATER.includes(code);
}

/** What has been fetched before stays playable, on its card, also when the drill is over. */
export function takenOver(now: DrillOnDevice | null, drill: PublishedDrill): DrillOnDevice {
  if (now === null) return { drill, rounds: {}, released: [] };
  const { deals, card } = drill.deals.length > 0 ? drill : now.drill;
  return { ...now, drill: { ...drill, deals, card } };
}

/** A round that was rejected is played anew, and may count. */
export function begunAnew(now: DrillOnDevice, deal: string): DrillOnDevice {
  return withRound(now, deal, freshRound());
}

type Played = (round: PlayedRound) => Partial<PlayedRound>;

/** A round that is not at a table any more stays as it is, for another tab may have sent it. */
export function playedOn(now: DrillOnDevice, deal: string, change: Played): DrillOnDevice {
  const round = now.rounds[deal] ?? freshRound();
  return round.state === 'playing' ? withRound(now, deal, { ...round, ...change(round) }) : now;
}

/** The same round, to be sent with other questions or under another name. */
export function repaired(
  now: DrillOnDevice,
  deal: string,
  questions: PlayedRound['questions'],
): DrillOnDevice {
  const round = now.rounds[deal];
  if (round?.state !== 'waiting') return now;
  return withRound(now, deal, { ...round, questions, code: null, message: null });
}

export function roundsToSend({ drill, rounds }: DrillOnDevice): (readonly [string, PlayedRound])[] {
  if (drill.state !== 'open') return [];
  return Object.entries(rounds).filter(([, round]) => round.state === 'waiting' && repairOf(round) === null);
}

/** Whether the page sends something by itself before long. */
export function isSendingDue(device: DrillOnDevice): boolean {
  return roundsToSend(device).some(([, { code }]) => code === null);
}

/** What the player has to change before the round can be counted. */
export function repairOf({ state, code }: PlayedRound): 'bad-name' | 'bad-question' | null {
  if (state !== 'waiting') return null;
  return code === 'bad-name' || code === 'bad-question' ? code : null;
}

/** What the server said of a round; where another one is in its place by now, that one stays as it is. */
export function answered(
  now: DrillOnDevice,
  { deal, id, questions }: Pick<SendRound, 'deal' | 'id' | 'questions'>,
  answer: ApiResult<RoundSent>,
): DrillOnDevice {
  const round = now.rounds[deal];
  if (round === undefined || round.id !== id) return now;
  if (answer.ok) {
    const { counted, asked, released } = answer.value;
    const message = questions.length > 0 && !asked ? DRILL.notAsked : null;
    const others = now.released.filter((one) => one.deal !== deal);
    return withRound({ ...now, released: [...others, released] }, deal, {
      ...round,
      state: counted ? 'counted' : 'practice',
      code: null,
      message,
    });
  }
  const { code, message } = answer;
  if (isForLater(code)) return now;
  if (code === 'drill-over') return { ...now, drill: { ...now.drill, state: 'over' } };
  if (code === 'drill-withdrawn') return { ...now, drill: { ...now.drill, state: 'withdrawn' } };
  return withRound(now, deal, {
    ...round,
    state: FINAL.includes(code) ? 'rejected' : 'waiting',
    code,
    message,
  });
}

function withRound(now: DrillOnDevice, deal: string, round: PlayedRound): DrillOnDevice {
  return { ...now, rounds: { ...now.rounds, [deal]: round } };
}

function freshRound(): PlayedRound {
  return { id: randomHex(12), answers: [], questions: [], state: 'playing', code: null, message: null };
}
