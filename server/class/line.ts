// The one line that a class plays together: where it stands, who has not chosen yet, what the class chose there.
import {
  type AnswerChoice,
  begin,
  type ClassLine,
  discreet,
  evolve,
  facesOf,
  facingOf,
  nextOnLine,
  openRound,
  openStep,
  type Round,
  type Settled,
  seatView,
} from '../../shared-engine/index.ts';
import type { Answer } from '../room/answers.ts';
import { turnDown } from '../room/decision.ts';
import { dealOf } from './entries.ts';
import type { LiveClass } from './live-class.ts';
import { playsOneLine } from './state.ts';

/** Every pupil sits alone, where the drill's deals are turned to. */
const PUPIL = 0;

/** The class goes on from this choice; `place` is the step for which it was meant, counted from 0. */
export async function goOn(live: LiveClass, place: number, choice: AnswerChoice | null): Promise<Answer> {
  const { state } = live;
  const round = lineOf(live);
  if (!playsOneLine(state) || round === null) return turnDown('no-line');
  if (place !== state.line.length || state.lineClosed) return turnDown('line-moved');
  const { waiting, reached } = stepOnLine(live);
  const [at] = reached;
  if (waiting > 0 || at === undefined) return turnDown('not-all-chosen');
  const next = nextOnLine(round, at, PUPIL, choice);
  if (!next.ok) return next;
  const { outcome, closed } = next;
  return live.submit({ kind: 'go-on', deal: state.dealt - 1, place, outcome, closed });
}

/** What the desk is told of the line; null where none is played or nothing is dealt. */
export function lineFor(live: LiveClass): ClassLine | null {
  const round = lineOf(live);
  if (!playsOneLine(live.state) || round === null) return null;
  const { line, lineClosed } = live.state;
  if (lineClosed) return { place: line.length, step: null, needed: 0, rack: [], waiting: 0, chosen: [] };
  const { waiting, reached } = stepOnLine(live);
  const facing = facingOf(round, PUPIL);
  return {
    place: line.length,
    step: openStep(seatView(round, PUPIL).stage),
    needed: facing.phase === 'passing' ? 3 : facing.phase === 'giving' ? facing.count : 0,
    rack: facesOf(round.racks[PUPIL]),
    waiting,
    chosen: waiting > 0 ? [] : toldOf(live, countsOf(reached)),
  };
}

/** The round as the class has gone on so far, nobody having answered the open step. */
function lineOf({ state: { deals, dealt, line } }: LiveClass): Round | null {
  const deal = deals[dealt - 1];
  if (deal === undefined) return null;
  const dealtRound = begin(openRound(deal, { layOpen: false }));
  return line.reduce<Round>((round, outcome) => evolve(round, { kind: 'settled', outcome }), dealtRound);
}

/** Of the pupils' tables: how many have the open step still before them, and how it came out at the others. */
function stepOnLine(live: LiveClass): { waiting: number; reached: readonly Settled[] } {
  const { pupils, dealt, line } = live.state;
  const outcomes = pupils.map((pupil): Settled | null => {
    const round = live.tables.at(pupil.room)?.live.room.state.play?.round;
    if (!round || dealOf(live, pupil) !== dealt - 1 || (round.own?.length ?? 0) !== line.length) return null;
    return round.settled[line.length] ?? null;
  });
  const reached = outcomes.flatMap((outcome) => outcome ?? []);
  return { waiting: outcomes.length - reached.length, reached };
}

/** Where the terms let nobody be told from the others, a choice that only one pupil made stays away. */
function toldOf({ state: { terms } }: LiveClass, counts: ClassLine['chosen']): ClassLine['chosen'] {
  return terms.names ? counts : [...discreet(counts, ({ pupils }) => pupils, true)];
}

/** What was chosen, most frequent first, by nobody's name; stand-ins' choices are counted apart from the pupils'. */
function countsOf(reached: readonly Settled[]): ClassLine['chosen'] {
  const alike = new Map<string, { choice: AnswerChoice; pupils: number }>();
  for (const at of reached) {
    const choice = choiceIn(at);
    if (choice === null) continue;
    const own = Number(at.by[PUPIL] === 'owner');
    const key = JSON.stringify(choice);
    alike.set(key, { choice, pupils: (alike.get(key)?.pupils ?? 0) + own });
  }
  return [...alike]
    .sort(([a, one], [b, other]) => other.pupils - one.pupils || (a < b ? -1 : 1))
    .map(([, it]) => it);
}

function choiceIn(at: Settled): AnswerChoice | null {
  switch (at.kind) {
    case 'move':
      if (at.by[PUPIL] === null) return null;
      return { kind: 'seal', step: at.step, tiles: at.own[PUPIL], blind: at.blind[PUPIL] };
    case 'vote':
      return { kind: 'vote', step: 'vote', go: at.go[PUPIL] };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: at.asked[PUPIL] };
  }
}
