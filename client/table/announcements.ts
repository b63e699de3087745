// What has happened between two states of the table, as sentences for the live region and above the rack.
import {
  isWaitingFor,
  SEATS,
  type Seat,
  type SeatStep,
  type SeatView,
  stepOf,
  type Table,
} from '../../shared-engine/index.ts';
import { openPass } from '../room/open-pass.ts';
import { nameOf, nameOrYou } from '../room/seat-names.ts';
import { countWord, courtesyQuestion, passTitle, STEP_NAMES, VOTE_QUESTION } from '../room/step-names.ts';
import { newlySaid, wordsOf } from '../room/table-talk.tsx';
import { capitalize, sentenceList, tileCount, tileList } from '../tiles/tile-names.ts';

/** Sentences for everything in `next` that `before` did not have yet; few enough to be listened to. */
export function announcementsOf(before: Table | null, next: Table): readonly string[] {
  const changes =
    before && before.code === next.code ? [...seatChanges(before, next), ...newWords(before, next)] : [];
  const view = next.view;
  if (view?.audience !== 'seat' || next.you === null) return changes;
  const old = before?.round === next.round && before.view?.audience === 'seat' ? before.view : null;
  const resolved = view.record.steps.slice(old?.record.steps.length ?? view.record.steps.length);
  const dealt = before !== null && old === null ? [dealAnnouncement(next, view)] : [];
  const changed = stepOf(view.stage) !== (old ? stepOf(old.stage) : undefined);
  return [
    ...changes,
    ...dealt,
    ...resolved.map((step) => stepAnnouncement(next, step)),
    ...(changed
      ? [decisionAnnouncement(next, view, next.you)]
      : old
        ? readyAnnouncements(next, old, view)
        : []),
  ];
}

function dealAnnouncement(table: Table, view: SeatView): string {
  const dealer = view.dealer === table.you ? 'You are East' : `${nameOf(table, view.dealer)} is East`;
  // A deal without a fingerprint was prepared by a teacher; this is said before the first pass (rule D4).
  const amongFriends = table.controls?.amongFriends === true;
  const fixed = amongFriends ? ' Your friends hold the same tiles.' : ' A teacher prepared this deal.';
  const prepared = view.commitment === null ? fixed : '';
  return `Dealt: ${tileCount(view.rack.length)} on your rack. ${dealer}.${prepared}`;
}

/** What happened last, for the line above the rack. */
export function lastAnnouncement(table: Table, view: SeatView): string {
  const last = view.record.steps.at(-1);
  return last ? stepAnnouncement(table, last) : dealAnnouncement(table, view);
}

/** A step that is over, as this seat saw it. */
export function stepAnnouncement(table: Table, step: SeatStep): string {
  switch (step.kind) {
    case 'move': {
      const away = step.by.flatMap((by, seat) => (by === 'stand-in' ? [SEATS[seat]!] : []));
      const standIn = away.length > 0 ? standInSentence(table, away) : '';
      if (step.step === 'courtesy-pass' && step.gave.length === 0)
        return `No tiles across for you.${standIn}`;
      return `${arrivalSentence(table, step)}${standIn}`;
    }
    case 'vote': {
      const stoppers = SEATS.filter((seat) => !step.go[seat]);
      if (stoppers.length === 0) return 'All four continue: there is a second Charleston.';
      return `${capitalize(sentenceList(stoppers.map((seat) => nameOrYou(table, seat))))} stopped. There is no second Charleston.`;
    }
    case 'ask': {
      if (table.you === null) return 'Both pairs have agreed on their courtesy.';
      const across = SEATS[(table.you + 2) % 4]!;
      const { asked, agreed } = step;
      return `Courtesy: you asked for ${asked[table.you]}, ${nameOf(table, across)} for ${asked[across]}. You swap ${tileCount(
        agreed[table.you],
      )}.`;
    }
  }
}

/** What a seat passed on blind arrived there too, and it does not know what it was. */
function arrivalSentence(table: Table, step: Extract<SeatStep, { kind: 'move' }>): string {
  const { from, to, received, blind, voided } = step;
  const giver = nameOf(table, from);
  const wentOn = table.you === null ? 0 : blind[table.you] - voided;
  const goesOn = `went on blind to ${nameOf(table, to)}.`;
  if (wentOn <= 0) return `${capitalize(giver)} passed you ${tileList(received)}.`;
  if (received.length === 0) return `${capitalize(giver)}’s ${countWord(wentOn)} ${goesOn}`;
  return `${capitalize(giver)} passed you ${tileList(received)}; ${countWord(wentOn)} ${goesOn}`;
}

function decisionAnnouncement(table: Table, view: SeatView, you: Seat): string {
  const pass = openPass(view, you);
  if (pass) return `${STEP_NAMES[pass.step]}. ${passTitle(table, pass)}.`;
  switch (view.stage.phase) {
    case 'voting':
      return VOTE_QUESTION;
    case 'asking':
      return courtesyQuestion(nameOf(table, SEATS[(you + 2) % 4]!));
    case 'closed':
      return 'This deal is over. Your review is private.';
    default:
      return `${STEP_NAMES[stepOf(view.stage) ?? 'courtesy-pass']}: the others are passing.`;
  }
}

function readyAnnouncements(table: Table, old: SeatView, view: SeatView): readonly string[] {
  return SEATS.filter(
    (seat) => seat !== table.you && isWaitingFor(old.stage, seat) && !isWaitingFor(view.stage, seat),
  ).map((seat) => `${capitalize(nameOf(table, seat))} is ready.`);
}

function seatChanges(before: Table, next: Table): readonly string[] {
  return SEATS.flatMap((seat) => {
    const was = before.seats[seat];
    const is = next.seats[seat];
    if (seat === next.you) return [];
    if (is.kind === 'person' && was.kind !== 'person') return [`${is.name} sat down.`];
    if (was.kind === 'person' && is.kind !== 'person') return [`${was.name} left the table.`];
    if (is.kind !== 'person' || was.kind !== 'person' || is.present === was.present) return [];
    return [is.present ? `${is.name} is here.` : `${is.name} is away. The seat is kept.`];
  });
}

function newWords(before: Table, next: Table): readonly string[] {
  return newlySaid(before, next)
    .filter(({ seat }) => seat !== next.you)
    .map((words) => `${nameOf(next, words.seat)} says: ${wordsOf(next, words)}.`);
}

/** A bot chooses for somebody who is away, or whose time has run out. */
function standInSentence(table: Table, seats: readonly Seat[]): string {
  return ` A bot chose for ${sentenceList(seats.map((seat) => nameOrYou(table, seat)))}.`;
}
