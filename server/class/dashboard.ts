// What the teacher sees while the class plays: built up field by field, a rack only where the terms allow it.
import {
  type BigScreen,
  type Dashboard,
  type DashboardPlayer,
  hasStep,
  isAfterVote,
  isAnonymous,
  kindsAt,
  type Round,
  SEATS,
  STEPS,
  type Step,
  seatView,
  spreadsOf,
  stepOf,
  stepOfOutcome,
} from '../../shared-engine/index.ts';
import { deadlineOf, disconnectedSince } from '../room/state.ts';
import { isAheadOfClass, isHeld } from '../room/teacher-controls.ts';
import type { ActiveClass } from './active-class.ts';
import { cohortOf, commonRack, hasFinished, hiddenPlaceOf } from './anonymity.ts';
import { bigScreenFor } from './big-screen.ts';
import { freezeFinished } from './freeze.ts';
import { guidedDealFor } from './guided-deal.ts';
import { resultsOf } from './player-results.ts';
import { arePlacesOpen } from './seating.ts';
import { type ClassPlayer, classTableTerms, isGuided, playersIn } from './state.ts';

/** Without its version, which is made of everything else. */
export async function dashboardFor(live: ActiveClass, now: number): Promise<Omit<Dashboard, 'version'>> {
  await freezeFinished(live);
  const { state, code, publicAddress } = live;
  const { drill, terms, dealt, holdBefore, joiningOpen, takeHome, ended } = state;
  const shown = ended ? null : state.shown;
  return {
    code,
    address: publicAddress,
    title: drill.title,
    form: drill.form,
    terms,
    deals: drill.deals.map(({ id, title, note }) => ({ id, title: title ?? null, note: note ?? null })),
    dealt,
    holdBefore,
    joiningOpen,
    takeHome,
    openTables: !ended && arePlacesOpen(state) ? state.tables.length : 0,
    ended,
    shown,
    bigScreen: shownToAll(await bigScreenFor(live)),
    keys: state.keys.filter(({ isRevoked }) => !isRevoked).map(({ id, at }) => ({ id, at })),
    screens: { hasCode: state.screen.codeHash !== null, open: state.screen.opened.length },
    players: playersIn(state).map((player) => dashboardPlayer(live, player, now)),
    guidedDeal: guidedDealFor(live),
    spreads: isAnonymous(terms) ? topicsOf(live) : openTopicsOf(live),
  };
}

function shownToAll({ answered, players, rack, spread }: Omit<BigScreen, 'version'>): Dashboard['bigScreen'] {
  return { answered, players, rack, spread };
}

function openTopicsOf(live: ActiveClass): Dashboard['spreads'] {
  const { dealt } = live.state;
  const entries = dealt === 0 ? [] : resultsOf(live, dealt - 1, false);
  const sections = live.card.file.sections.map(({ id }) => id);
  const spreads = spreadsOf(
    entries.map(({ entry }) => entry),
    sections,
  );
  // A step to which bots alone have come, for somebody who was removed perhaps, is nothing to talk about yet.
  return spreads
    .filter(({ players }) => players > 0)
    .map(({ seat, kind, step, players, stoodIn }) => ({ seat, kind, step, players, stoodIn }));
}

/** The steps that somebody has come past, as far as that may be shown: with the vote all steps after it (rule AN7). */
function topicsOf(live: ActiveClass): Dashboard['spreads'] {
  const { state } = live;
  const deal = state.dealt - 1;
  const guided = isGuided(state);
  const ways = classTableTerms(state);
  return SEATS.flatMap((seat) => {
    const cohort = cohortOf(state, deal, seat);
    const isPast = (step: Step) => cohort.some((one) => hasFinished(live, one, deal, step));
    const steps = STEPS.filter((step) => hasStep(step, ways)).filter((step) =>
      guided
        ? isPast(step) && commonRack(live, { deal, seat, step }) !== null
        : isPast(isAfterVote(step) ? 'vote' : step),
    );
    const topics = steps.flatMap((step) => kindsAt(step, ways).map((kind) => ({ kind, step })));
    return topics.map((topic) => ({ seat, ...topic, players: 0, stoodIn: 0 }));
  });
}

function dashboardPlayer(live: ActiveClass, player: ClassPlayer, now: number): DashboardPlayer {
  const { id, name, seat, standIn, first } = player;
  const table = live.tables.at(player.room)?.live;
  const held = table?.room.state.seats[seat];
  const present = held?.kind === 'person' && disconnectedSince(held) === null;
  const ready = held?.kind === 'person' && held.ready;
  const number = live.state.tables.indexOf(player.room) + 1;
  const about = { id, name, table: number, seat, present, standIn, ready };
  const play = table?.room.state.play;
  const nothing = { submitted: false, held: false, since: 0, remaining: null, given: 0, rack: null };
  if (!table || !play) return { ...about, deal: 0, at: 'waiting', ...nothing };
  const hidden = hiddenPlaceOf(live, player);
  if (hidden) return { ...about, ready: false, deal: hidden.deal + 1, at: 'after-vote', ...nothing };
  const view = seatView(play.round, seat);
  const { state } = table.room;
  const stepSince = table.stepSince();
  const ahead = isAheadOfClass(play.round, state.controls);
  const step = ahead ? finishedStep(play.round) : stepOf(view.stage);
  const deadline = deadlineOf(state, stepSince);
  // A player who has chosen and waits for the class is not held: the class has not come to that step yet.
  const waits = !ahead && isHeld(play.round, state.controls);
  return {
    ...about,
    deal: first + play.number,
    at: step ?? 'closed',
    submitted: ahead || view.answer !== null,
    held: waits,
    since: step === null ? 0 : Math.max(0, now - stepSince),
    remaining: deadline === null || waits || ahead ? null : Math.max(0, deadline - now),
    given: play.moreTime,
    rack: live.state.terms.racks ? view.rack : null,
  };
}

/** The step that this table has finished and from which the class has still to advance. */
function finishedStep({ resolved, actualSteps = [] }: Round): Step | null {
  const at = resolved[actualSteps.length];
  if (at === undefined) return null;
  return stepOfOutcome(at);
}
