// What the wall shows to everybody in the classroom: one step, its rack and, once revealed, the spread; no name at all.
import {
  type ChoiceReview,
  discreetSpread,
  openStep,
  ownStep,
  STEPS,
  type Step,
  seatView,
  spreadsOf,
  type Wall,
  type WallChoice,
} from '../../shared-engine/index.ts';
import type { Reviewer } from '../ports.ts';
import { discretionFor } from './discretion.ts';
import { entriesOf, type Judging, roundOf } from './entries.ts';
import type { LiveClass } from './live-class.ts';
import type { SharedJudges } from './shared-judges.ts';
import { pupilsIn } from './state.ts';

export interface WallPorts {
  readonly reviewer: Reviewer;
  /** First answers alone where it is missing. */
  readonly judges?: SharedJudges | undefined;
}

export async function wallFor(live: LiveClass, ports: WallPorts): Promise<Wall> {
  const { state, version, code } = live;
  const { drill, dealt, shown, ended } = state;
  const pupils = pupilsIn(state);
  const { families } = live.card.card;
  const deal = drill.deals[dealt - 1];
  const spread =
    shown && deal
      ? await spreadAt(live, shown, shown.revealed ? judgingOf(live, shown, ports) : null)
      : undefined;
  return {
    version,
    code,
    title: drill.title,
    deal: deal ? { number: dealt, of: drill.deals.length, title: deal.title ?? null } : null,
    pupils: pupils.length,
    answered: shown ? pupils.filter(({ id }) => hasAnswered(live, id, shown)).length : 0,
    shown,
    rack: shown ? rackAt(live, shown, spread?.rack ?? null) : null,
    aims: spread?.aims ?? [],
    spread: shown?.revealed ? (spread ?? null) : null,
    families: Object.fromEntries(families.map(({ id, name }) => [id, name])),
    ended,
  };
}

/** What is on the wall is looked at closely, and the wall told again when that is done. */
function judgingOf(live: LiveClass, { step, kind }: WallChoice, { reviewer, judges }: WallPorts): Judging {
  if (!judges) return { reviewer };
  const wanted = (choice: ChoiceReview): boolean => choice.step === step && choice.kind === kind;
  return { reviewer, deeper: { judges, wanted, onJudged: () => live.tell() } };
}

async function spreadAt(live: LiveClass, { seat, step, kind }: WallChoice, judging: Judging | null) {
  const entries = await entriesOf(live, live.state.dealt - 1, judging);
  const spreads = spreadsOf(
    entries.map(({ entry }) => entry),
    live.card.card.families.map(({ id }) => id),
  );
  const spread = spreads.find((one) => one.seat === seat && one.step === step && one.kind === kind);
  const discretion = discretionFor(live, live.state.dealt - 1);
  return spread && discretion ? discreetSpread(spread, discretion(spread)) : spread;
}

/** The rack as dealt is the teacher's own; a later one is shown where several faced it. */
function rackAt(live: LiveClass, { seat, step }: WallChoice, faced: Wall['rack']): Wall['rack'] {
  const { deals, dealt } = live.state;
  return STEPS[0] === step ? (deals[dealt - 1]?.prepared[seat] ?? null) : faced;
}

function hasAnswered(live: LiveClass, id: number, { seat, step }: WallChoice): boolean {
  const pupil = live.state.pupils[id];
  const round = pupil && roundOf(live, pupil, live.state.dealt - 1);
  if (!pupil || !round || pupil.seat !== seat) return false;
  const view = seatView(round, pupil.seat);
  const open = openStep(view.stage);
  return open === step
    ? view.answer !== null
    : view.record.steps.some((_, place) => stepOf(ownStep(view.record, place)) === step);
}

function stepOf(done: ReturnType<typeof ownStep>): Step | null {
  switch (done?.kind) {
    case 'move':
      return done.step;
    case 'vote':
      return 'vote';
    case 'ask':
      return 'courtesy-ask';
    case undefined:
      return null;
  }
}
