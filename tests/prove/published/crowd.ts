// Many people who play a published drill when they like: each has a device, an opinion, and a moment in the week.

import { drillPath } from '../../../shared-engine/protocol/paths.ts';
import type { PublishedDrill, SendRound } from '../../../shared-engine/protocol/published.ts';
import { stream } from '../../../shared-engine/rules/deal/random.ts';
import type { AnswerChoice } from '../../../shared-engine/rules/exchange/command.ts';
import { device, openDrill, playAtRandom, playDeal } from '../../kit/published.ts';
import type { TestServer } from '../../kit/server.ts';

/** Ways to play that many share; one person in ten plays as nobody else does. */
const SHARED_OPINIONS = 12;

export interface Crowd {
  readonly code: string;
  readonly drill: PublishedDrill;
  /** What each player chose in each deal, in the order in which they sent it. */
  readonly sent: readonly (readonly (readonly AnswerChoice[])[])[];
}

/** Everybody plays every deal; `pause` moves the clock on before each player. */
export async function playCrowd(
  at: TestServer,
  code: string,
  { seed, people, pause }: { readonly seed: string; readonly people: number; readonly pause: () => void },
): Promise<Crowd> {
  const random = stream(seed, 'crowd');
  const drill = await openDrill(at, code, device('onlooker'));
  const played = new Map<string, readonly AnswerChoice[]>();
  const choicesOf = (opinion: string, place: number) => {
    const key = `${opinion} ${place}`;
    const choices = played.get(key) ?? playDeal(drill, place, playAtRandom(`${seed} ${key}`)).choices;
    played.set(key, choices);
    return choices;
  };
  const sent: AnswerChoice[][][] = drill.deals.map(() => []);
  for (let person = 0; person < people; person++) {
    pause();
    const isAlone = random.below(10) === 0;
    // The first opinions are shared by more than the last ones.
    const opinion = isAlone
      ? `own ${person}`
      : String(Math.min(random.below(SHARED_OPINIONS), random.below(SHARED_OPINIONS)));
    for (const [place, { id }] of drill.deals.entries()) {
      const choices = [...choicesOf(opinion, place)];
      const round = { id: `crowd-${person}-${place}`, deal: id, choices, questions: [] };
      const response = await sendFrom(
        person,
        `${at.url}${drillPath(code, 'rounds')}`,
        device(`${seed} ${person}`),
        round,
      );
      if (response.status !== 200) throw new Error(`a round was answered with ${response.status}`);
      sent[place]!.push(choices);
    }
  }
  return { code, drill, sent };
}

/** Everybody is at an address of their own, as the proxy before the server says. */
function sendFrom(person: number, url: string, secret: string, round: SendRound): Promise<Response> {
  const headers = {
    'content-type': 'application/json',
    authorization: `Bearer ${secret}`,
    'x-forwarded-for': `10.0.${Math.floor(person / 250)}.${(person % 250) + 1}`,
  };
  return fetch(url, { method: 'POST', headers, body: JSON.stringify(round) });
}
