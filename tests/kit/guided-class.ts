// A class with guided deals for tests: opened and joined, each player choosing in a way of its own.
import { onTestFinished } from 'vitest';
import type { Drill } from '../../shared-engine/drill/format.ts';
import type { GuidedDeal } from '../../shared-engine/protocol/class.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { act, dashboardOf, type JoinedPlayer, joinAll, openClass, type Teacher } from './class-room.ts';
import { dealOf, drillOf } from './drills.ts';
import { anyAnswer, isAsked, ownView } from './http-client.ts';
import { seedNamed } from './rounds.ts';
import { startServer, type TestServer, type TestServerOptions } from './server.ts';
import type { Peer } from './sockets.ts';

export const GUIDED_DRILL: Drill = {
  ...drillOf([
    dealOf({ kind: 'random', seed: seedNamed('line one') }, { id: 'one', seat: 3, dealer: 3 }),
    dealOf({ kind: 'random', seed: seedNamed('line two') }, { id: 'two' }),
  ]),
  form: 'guided',
};

export interface GuidedClass {
  readonly at: TestServer;
  readonly teacher: Teacher;
  readonly players: readonly JoinedPlayer[];
  readonly peers: readonly Peer[];
}

/** The class was told that choices of single players are shown. */
export async function guidedClass(
  names: readonly string[],
  options: TestServerOptions & { deadline?: number; ways?: Drill['ways'] } = {},
): Promise<GuidedClass> {
  const at = await startServer({ seed: 'line', ...options });
  onTestFinished(() => at.stop());
  const { deadline = null, ways } = options;
  const teacher = await openClass(at, { ...GUIDED_DRILL, ...(ways && { ways }) }, { names: true, deadline });
  const { players, peers } = await joinAll(at, teacher.code, names);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
  return { at, teacher, players, peers };
}

export async function guidedDealOf({ at, teacher }: GuidedClass): Promise<GuidedDeal> {
  const { guidedDeal } = await dashboardOf(at, teacher);
  if (guidedDeal === null) throw new Error('no guided deal is played');
  return guidedDeal;
}

/** Each player answers the open step in a way of its own; resolves when all three bots have, too. */
export async function chooseApart({ peers }: Pick<GuidedClass, 'peers'>, name: string): Promise<void> {
  for (const [place, peer] of peers.entries()) {
    if (!isAsked(peer)) continue;
    const answer = await peer.choose(anyAnswer(ownView(peer), stream(name, `player ${place}`)));
    if (answer.kind === 'rejected') throw new Error(answer.message);
  }
  await Promise.all(
    peers.map((peer) => peer.untilTable(({ controls: now }) => now?.held === true, 'the hold')),
  );
}

export async function advance(
  class_: GuidedClass,
  choice: AnswerChoice | null,
  stepIndex: number,
): Promise<void> {
  const response = await act(class_.at, class_.teacher, { kind: 'advance', stepIndex, choice });
  if (response.status !== 200) throw new Error(`the class did not advance: ${response.status}`);
  const isThere = (peer: Peer) => ownView(peer).record.actualSteps?.length === stepIndex + 1;
  await Promise.all(class_.peers.map((peer) => peer.untilTable(() => isThere(peer), 'the class')));
}
