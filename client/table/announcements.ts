// What has happened between two states of the table, as sentences for the live region and the line above the rack.
import {
  openStep,
  SEATS,
  type Seat,
  type SeatStep,
  type SeatView,
  type Table,
} from '../../shared-engine/index.ts';
import { openPass, waitsFor } from '../room/pending-decision.ts';
import { capitalize, nameOf, nameOrYou } from '../room/seat-names.ts';
import { courtesyQuestion, passTitle, STEP_NAMES, VOTE_QUESTION } from '../room/step-names.ts';
import { sentenceList, tileCount, tileList } from '../tiles/tile-names.ts';

/** Sentences for everything in `next` that `before` did not have yet; few enough to be listened to. */
export function announcementsOf(before: Table | null, next: Table): readonly string[] {
  const people = before && before.code === next.code ? peopleNews(before, next) : [];
  const view = next.view;
  if (view?.audience !== 'seat' || next.you === null) return people;
  const old = before?.round === next.round && before.view?.audience === 'seat' ? before.view : null;
  const settled = view.record.steps.slice(old?.record.steps.length ?? view.record.steps.length);
  const dealt = before !== null && old === null ? [dealtNews(next, view)] : [];
  const changed = openStep(view.stage) !== (old ? openStep(old.stage) : undefined);
  return [
    ...people,
    ...dealt,
    ...settled.map((step) => stepAnnouncement(next, step)),
    ...(changed ? [questionOf(next, view, next.you)] : old ? sealNews(next, old, view) : []),
  ];
}

function dealtNews(table: Table, view: SeatView): string {
  const dealer = view.dealer === table.you ? 'You are East' : `${nameOf(table, view.dealer)} is East`;
  // Where no fingerprint was shown there is a reason, and it is told before the first pass (rule D4).
  const prepared = view.commitment === null ? ' A teacher prepared this deal.' : '';
  return `Dealt: ${tileCount(view.rack.length)} on your rack. ${dealer}.${prepared}`;
}

/** What happened last, for the line above the rack. */
export function lastAnnouncement(table: Table, view: SeatView): string {
  const last = view.record.steps.at(-1);
  return last ? stepAnnouncement(table, last) : dealtNews(table, view);
}

/** A step that is over, as this seat lived it. */
export function stepAnnouncement(table: Table, step: SeatStep): string {
  switch (step.kind) {
    case 'move': {
      const passed = step.by.flatMap((by, seat) => (by === 'stand-in' ? [SEATS[seat]!] : []));
      const stood = passed.length
        ? ` Time ran out for ${sentenceList(passed.map((seat) => nameOrYou(table, seat)))}; a stand-in chose.`
        : '';
      if (step.step === 'courtesy-pass' && step.gave.length === 0) return `No tiles across for you.${stood}`;
      return `${capitalize(nameOf(table, step.from))} passed you ${tileList(step.received)}.${stood}`;
    }
    case 'vote': {
      const stoppers = SEATS.filter((seat) => !step.go[seat]);
      if (stoppers.length === 0) return 'All four go on: a second Charleston.';
      return `${capitalize(sentenceList(stoppers.map((seat) => nameOrYou(table, seat))))} said stop; no second Charleston.`;
    }
    case 'ask': {
      if (table.you === null) return 'The courtesy numbers are in.';
      const across = SEATS[(table.you + 2) % 4]!;
      return `You asked for ${step.asked[table.you]}, ${nameOf(table, across)} for ${step.asked[across]}: ${tileCount(
        step.agreed[table.you],
      )} each.`;
    }
  }
}

function questionOf(table: Table, view: SeatView, you: Seat): string {
  const pass = openPass(view, you);
  if (pass) return `${STEP_NAMES[pass.step]}. ${passTitle(table, pass)}.`;
  switch (view.stage.phase) {
    case 'voting':
      return VOTE_QUESTION;
    case 'asking':
      return courtesyQuestion(nameOf(table, SEATS[(you + 2) % 4]!));
    case 'closed':
      return 'The round is closed. Your review is private.';
    default:
      return `${STEP_NAMES[openStep(view.stage) ?? 'courtesy-pass']}: the others are passing.`;
  }
}

function sealNews(table: Table, old: SeatView, view: SeatView): readonly string[] {
  return SEATS.filter((seat) => seat !== table.you && waitsFor(old, seat) && !waitsFor(view, seat)).map(
    (seat) => `${capitalize(nameOf(table, seat))} is ready.`,
  );
}

function peopleNews(before: Table, next: Table): readonly string[] {
  return SEATS.flatMap((seat) => {
    const was = before.seats[seat];
    const is = next.seats[seat];
    if (seat === next.you) return [];
    if (is.kind === 'person' && was.kind !== 'person') return [`${is.name} sat down.`];
    if (was.kind === 'person' && is.kind !== 'person') return [`${was.name} left the table.`];
    if (is.kind !== 'person' || was.kind !== 'person' || is.present === was.present) return [];
    return [is.present ? `${is.name} is here.` : `${is.name} is away; the seat is kept.`];
  });
}
