// A published drill for tests: its teacher, and devices that play its deals by themselves and send the rounds.
import { hashSecret } from '../../server/secrets.ts';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { botRandom } from '../../shared-engine/bots/finish-round.ts';
import { scriptedChoice } from '../../shared-engine/bots/scripted.ts';
import type { Drill } from '../../shared-engine/drill/format.ts';
import { botsAround } from '../../shared-engine/drill/prepare.ts';
import { DRILLS_PATH, drillPath } from '../../shared-engine/protocol/paths.ts';
import {
  drillPublishedSchema,
  type PublishDrill,
  type PublishedDrill,
  publishedDrillSchema,
  type SendRound,
} from '../../shared-engine/protocol/published.ts';
import { type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { decide, openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin, evolve } from '../../shared-engine/rules/exchange/evolve.ts';
import { stepOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { pendingDecision } from '../../shared-engine/rules/view/pending-decision.ts';
import { type SeatView, seatView } from '../../shared-engine/rules/view/view.ts';
import { cookieIn } from './class-room.ts';
import { dealOf, drillOf } from './drills.ts';
import { anyAnswer, post } from './http-client.ts';
import { houseKernel } from './reviews.ts';
import { seedNamed } from './rounds.ts';
import type { TestServer } from './server.ts';

type Address = Pick<TestServer, 'url'>;

/** Where a drill is published, and what time it is there. */
interface Published extends Address {
  readonly clock: Pick<TestServer['clock'], 'now'>;
}

export interface DrillTeacher {
  readonly code: string;
  readonly secret: string;
}

export const DAY_MS = 24 * 60 * 60 * 1000;

/** Deals whose bots choose at once. */
export function quickDrill(deals = 1): Drill {
  const list = Array.from({ length: deals }, (_, n) =>
    dealOf({ kind: 'random', seed: seedNamed(`published ${n}`) }, { id: `deal-${n + 1}` }),
  );
  const { bots, ...drill } = drillOf(list);
  return { ...drill, bots: { ...bots, styles: ['random', 'random', 'random'] } };
}

export function request(at: Published, drill: unknown, more: Partial<PublishDrill> = {}): PublishDrill {
  const terms = { compare: 'at-once', names: false, cardClosed: false } as const;
  return { drill, terms, until: at.clock.now() + 7 * DAY_MS, card: null, ...more };
}

export async function publish(
  at: Published,
  drill: unknown,
  more: Partial<PublishDrill> = {},
): Promise<DrillTeacher> {
  const response = await post(`${at.url}${DRILLS_PATH}`, request(at, drill, more));
  const { code } = drillPublishedSchema.parse(await response.json());
  return { code, secret: cookieIn(response, 'teacher') };
}

/** The secret of a device with this name. */
export function device(name: string): string {
  return `${hashSecret(name)}`.slice(0, 43);
}

export function fetchAt(at: Address, code: string, part: Parameters<typeof drillPath>[1], secret: string) {
  return fetch(`${at.url}${drillPath(code, part)}`, { headers: { authorization: `Bearer ${secret}` } });
}

export async function openDrill(at: Address, code: string, secret: string): Promise<PublishedDrill> {
  return publishedDrillSchema.parse(await (await fetchAt(at, code, '', secret)).json());
}

/** How somebody plays; `n` counts the player's choices in the round. */
export type Play = (view: SeatView, n: number) => AnswerChoice;

export function playAtRandom(seed: string): Play {
  const random: Random = stream(seed, 'player');
  return (view) => anyAnswer(view, random);
}

/** The player's own answers, as a device has them when the deal is over, and the round. */
export function playDeal(
  { bots, deals, tableTerms }: Pick<PublishedDrill, 'bots' | 'deals' | 'tableTerms'>,
  place: number,
  play: Play,
): { readonly choices: AnswerChoice[]; readonly round: Round } {
  const { deal, script } = deals[place]!;
  const styles = botsAround(0, { styles: bots, seed: deal.seed });
  const choices: AnswerChoice[] = [];
  let round = begin(openRound(deal, tableTerms));
  while (round.phase !== 'closed') {
    for (const seat of SEATS) {
      const view = seatView(round, seat);
      const step = stepOf(view.stage);
      if (step === null || view.answer !== null || pendingDecision(view) === null) continue;
      const style = styles[seat];
      const own = style ? chooseFor(style, view, houseKernel, botRandom(deal.seed, step, seat)) : null;
      const choice = own ? scriptedChoice(script, view, own) : play(view, choices.length);
      if (style === null) choices.push(choice);
      const decision = decide(round, { ...choice, seat, by: style ? 'bot' : 'player' });
      if (!decision.ok) throw new Error(decision.message);
      round = decision.events.reduce(evolve, round);
    }
  }
  return { choices, round };
}

export function sendRound(at: Address, code: string, secret: string, round: SendRound): Promise<Response> {
  return post(`${at.url}${drillPath(code, 'rounds')}`, round, secret);
}
