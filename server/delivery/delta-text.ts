// The text of a delta to each audience of a room: what all may know of a change is written once for all of them.
import { viewDeltaTexts } from '../../shared-engine/index.ts';
import type { RoomState } from '../room/state.ts';
import { audienceOf, remainingOf, roundView, seatInfos, type TableFacts } from './audience.ts';
import { changedControls, haveSeatsChanged, isSameView, type Moment, youIn } from './delta.ts';
import { spareInText, spareInView } from './padding.ts';

export interface WrittenDelta {
  /** What `JSON.stringify` makes of the delta message for the same audience. */
  readonly text: string;
  /** How long it could be at most with other secrets in it, in characters. */
  readonly size: number;
}

/** Of everybody who was told of the room as it was at `before`, and is told of it as it is at `now`. */
export class DeltaTexts {
  readonly #facts: TableFacts;
  readonly #begin: string;
  readonly #changes: string;
  readonly #views: ReturnType<typeof viewDeltaTexts>;

  constructor(before: RoomState, now: RoomState, facts: TableFacts) {
    this.#facts = facts;
    const remaining = JSON.stringify(remainingOf(now, facts));
    this.#begin = `{"kind":"delta","after":${before.seq},"seq":${now.seq},"table":{"remaining":${remaining}`;
    const round = now.play?.number ?? 0;
    this.#changes = [
      haveSeatsChanged(before, now) ? `,"seats":${JSON.stringify(seatInfos(now, facts.absentMs))}` : '',
      before.terms !== now.terms ? `,"terms":${JSON.stringify(now.terms)}` : '',
      (before.play?.number ?? 0) !== round ? `,"round":${round}` : '',
      before.said !== now.said ? `,"said":${JSON.stringify(now.said)}` : '',
    ].join('');
    const goesOn = before.play && now.play && before.play.number === now.play.number;
    this.#views = goesOn ? viewDeltaTexts(before.play.round, now.play.round) : null;
  }

  /** Both moments are for one person or both for a spectator, as in `deltaBetween`. */
  write(before: Moment, now: Moment): WrittenDelta {
    const you = youIn(now);
    const controls = this.#facts.policy.hasTeacher ? changedControls(before, now) : null;
    const { text: view, spare } = this.#view(before, now);
    let text = this.#begin;
    if (youIn(before) !== you) text += `,"you":${JSON.stringify(you)}`;
    text += this.#changes;
    if (controls) text += `,"controls":${JSON.stringify(controls)}`;
    text += `${view}}}`;
    return { text, size: text.length + spare };
  }

  #view(before: Moment, now: Moment): { readonly text: string; readonly spare: number } {
    if (isSameView(before, now)) {
      if (before.state.play?.round === now.state.play?.round) return { text: '', spare: 0 };
      const written = this.#views?.(audienceOf(now.state, now.listening));
      if (written) return { text: `,"viewDelta":${written.text}`, spare: spareInText(written) };
    }
    const view = roundView(now.state, now.listening);
    return { text: `,"view":${JSON.stringify(view)}`, spare: spareInView(view) };
  }
}
