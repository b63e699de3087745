// What one audience has not been told yet: the parts of its table that are other than they were.
import { isDeepStrictEqual } from 'node:util';
import { type TableNews, viewNews } from '../../shared-engine/index.ts';
import {
  audienceOf,
  type Listening,
  ledFor,
  remainingOf,
  roundView,
  seatInfos,
  type TableFacts,
} from './audience.ts';
import type { RoomState } from './state.ts';

/** A moment of the room, as somebody hears of it from a seat or as a watcher. */
export interface Heard {
  readonly state: RoomState;
  readonly listening: Listening;
}

/** Both moments are for one person or both for a watcher, so their difference says nothing that may not be known. */
export function newsBetween(before: Heard, now: Heard, facts: TableFacts): TableNews {
  const { state, listening } = now;
  const you = listening?.seat ?? null;
  const round = state.play?.number ?? 0;
  return {
    // Time runs without an event.
    remaining: remainingOf(state, facts),
    ...((before.listening?.seat ?? null) !== you && { you }),
    // The host never changes but with a chair.
    ...(before.state.chairs !== state.chairs && { seats: seatInfos(state) }),
    ...((before.state.play?.number ?? 0) !== round && { round }),
    ...(state.door === 'class' && newsOfLead(before, now)),
    ...newsOfView(before, now),
  };
}

function newsOfLead(before: Heard, now: Heard): Pick<TableNews, 'led'> {
  const [then, led] = [ledFor(before.state, before.listening), ledFor(now.state, now.listening)];
  return isDeepStrictEqual(then, led) ? {} : { led };
}

function newsOfView(before: Heard, now: Heard): Pick<TableNews, 'view' | 'viewNews'> {
  const [then, { play }] = [before.state.play, now.state];
  const was = audienceOf(before.state, before.listening);
  const audience = audienceOf(now.state, now.listening);
  if (was.kind === audience.kind && then?.number === play?.number) {
    if (play === null || then?.round === play.round) return {};
    const news = then && viewNews(then.round, play.round, audience);
    if (news) return { viewNews: news };
  }
  return { view: roundView(now.state, now.listening) };
}
