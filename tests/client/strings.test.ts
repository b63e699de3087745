// The sentences of the page: they depend on the table alone and are the same for everyone at the same seat.
import { describe, expect, it } from 'vitest';
import { reviewText, spokenSentences } from '../../client/review/review-text.ts';
import { aimSentences, lossSentence, nextWords, REVIEW } from '../../client/review/strings.ts';
import { aimsAt, aimsOfRound, readAims, toggleAim, writeAims } from '../../client/room/aims.ts';
import { openPass } from '../../client/room/open-pass.ts';
import { stepState } from '../../client/room/step-names.ts';
import { VERDICTS } from '../../client/room/verdicts.ts';
import { unusualCount, WAYS_OF, waysInWords } from '../../client/room/ways.ts';
import { announcementsOf, lastAnnouncement } from '../../client/table/announcements.ts';
import { connectionMessage } from '../../client/table/connection-strings.ts';
import { clockText } from '../../client/table/strings.ts';
import { tileList, tileName } from '../../client/tiles/tile-names.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import type { SeatInfo, Table } from '../../shared-engine/protocol/table.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { MODES, STANDARD_TERMS, termsFrom } from '../../shared-engine/rules/exchange/terms.ts';
import { FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatStep } from '../../shared-engine/rules/view/record.ts';
import { type SeatView, seatView } from '../../shared-engine/rules/view/view.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { opened, type Played, playOn } from '../kit/rounds.ts';

const SEATS_TAKEN = ['Ines', 'Tomas', 'Wilma', 'Odo'].map(
  (name): SeatInfo => ({ kind: 'person', name, present: true, ready: true, host: name === 'Ines' }),
);

function tableOf({ round }: Played, seats = SEATS_TAKEN): Table {
  return {
    code: 'ABCD2345',
    you: 0,
    seats: [seats[0]!, seats[1]!, seats[2]!, seats[3]!],
    mode: 'friends',
    terms: STANDARD_TERMS.friends,
    card: { id: 'house', name: 'House card' },
    round: 1,
    remaining: null,
    view: seatView(round, 0),
  };
}

describe('names', () => {
  it('S1 every face has a name of its own', () => {
    expect(new Set(FACES.map(tileName)).size).toBe(36);
    expect(tileList(['east', 'white', 'flower'])).toBe('east wind, soap and flower');
  });
});

describe('announcements', () => {
  it('an announcement names who passed what to this seat, step by step, and never a tile of a pass between others', () => {
    const random = stream('news', 'choices');
    let played = opened('news');
    while (played.round.phase !== 'closed') {
      const before = played;
      played = playOn(before, random, (round) => round.resolved.length > before.round.resolved.length);
      const view = seatView(played.round, 0);
      const step = view.record.steps.at(-1)!;
      const news = announcementsOf(tableOf(before), tableOf(played)).join(' ');
      if (step.kind !== 'move') continue;
      const spoken = FACES.filter((face) => new RegExp(`\\b${tileList([face])}\\b`).test(news));
      expect(spoken).toEqual(FACES.filter((face) => step.received.includes(face)));
    }
  });

  it('tiles that went on blind are said to have gone on blind, beside what stayed', () => {
    const played = playOn(opened('unseen'), stream('unseen', 'choices'), (round) => round.phase === 'voting');
    const view = seatView(played.round, 0);
    const last = view.record.steps.at(-1)!;
    if (last.kind !== 'move') throw new Error('the first left comes before the vote');
    const said = (blind: number, received: readonly Face[]) => {
      const step: SeatStep = { ...last, received, voided: 0, blind: [blind, 0, 0, 0] };
      return lastAnnouncement(tableOf(played), { ...view, record: { ...view.record, steps: [step] } });
    };
    expect([said(3, []), said(2, ['east']), said(0, ['east', 'bam-3', 'red'])]).toEqual([
      'Tomas’s three went on blind to Odo.',
      'Tomas passed you east wind; two went on blind to Odo.',
      'Tomas passed you east wind, 3 bam and red dragon.',
    ]);
  });

  it('D4 the page says before the first pass that a teacher prepared the deal, and says it of no other', () => {
    const played = opened('prepared');
    const table = tableOf(played);
    const said = (view: SeatView) => [
      lastAnnouncement(table, view),
      ...announcementsOf({ ...table, round: 0 }, { ...table, view }),
    ];
    const view = seatView(played.round, 0);
    expect(said(view).join(' ')).not.toContain('teacher');
    const sentence = /\. A teacher prepared this deal\.$/;
    const [line, ...spoken] = said({ ...view, commitment: null });
    expect(line).toMatch(sentence);
    expect(spoken[0]).toMatch(sentence);
  });

  it('O1 the page says who stopped once all have answered', () => {
    const random = stream('stop', 'choices');
    const voting = playOn(opened('stop'), random, (round) => round.phase === 'voting');
    const over = playOn(
      voting,
      random,
      (round) => round.phase !== 'voting',
      (_, seat) => ({ kind: 'vote', step: 'vote', go: seat !== 2 }),
    );
    const table = tableOf(over);
    expect(lastAnnouncement(table, seatView(over.round, 0))).toBe(
      'Wilma stopped. There is no second Charleston.',
    );
  });

  it('a friend who goes away and comes back is announced', () => {
    const played = opened('away');
    const away = SEATS_TAKEN.map(
      (info, seat): SeatInfo => (seat === 3 && info.kind === 'person' ? { ...info, present: false } : info),
    );
    expect(announcementsOf(tableOf(played), tableOf(played, away))).toEqual([
      'Odo is away. The seat is kept.',
    ]);
    expect(announcementsOf(tableOf(played, away), tableOf(played))).toEqual(['Odo is here.']);
  });
});

describe('the open decision', () => {
  it('C1 the first pass goes right and comes from the left', () => {
    const view = seatView(opened('facing').round, 3);
    expect(openPass(view, 3)).toMatchObject({ to: 0, from: 2, needed: 3, blindAllowed: false });
  });

  it('O1 the three passes of the second Charleston are marked as skipped after a stop', () => {
    const struck = STEPS.filter((step) => stepState(step, 'courtesy-ask', true) === 'skipped');
    expect(struck).toEqual(['second-left', 'second-across', 'second-right']);
  });
});

describe('how a table plays', () => {
  it('W1 W2 W3 W4 W5 W6 Z2 the table says one line for each way, first those that are not usual', () => {
    const usual = waysInWords(STANDARD_TERMS.friends, 'friends');
    expect(usual.every((line) => line.usual)).toBe(true);
    expect(new Set(usual.map(({ says }) => says)).size).toBe(Object.keys(STANDARD_TERMS.friends).length);
    const terms = { ...STANDARD_TERMS.friends, secondCharleston: 'none', blindPasses: false } as const;
    const lines = waysInWords(terms, 'friends');
    expect(lines.slice(0, 2).map(({ says }) => says)).toEqual([
      'There is no second Charleston.',
      'Nobody passes blind.',
    ]);
    expect(lines.map((line) => line.usual)).toEqual(lines.map((_, place) => place >= 2));
    expect(unusualCount(terms, 'friends')).toBe(2);
  });

  it('W1 W5 W6 Z2 whatever may be chosen for a table is a way that its server takes', () => {
    for (const mode of MODES) {
      for (const { name, options } of WAYS_OF[mode]) {
        for (const { part } of options) {
          const agreed = termsFrom({ ...STANDARD_TERMS[mode], ...part }, mode);
          expect(agreed.ok && agreed.terms[name]).toBe(part[name]);
        }
      }
    }
  });
});

describe('the aim', () => {
  it('at most two sections can be aimed at, a third is not taken, and a reload keeps them', () => {
    const tab = memoryStorage();
    const aims = ['stairs', 'bookends', 'garden'].reduce(
      (said, id) => toggleAim(said, 1, 'first-right', id),
      {},
    );
    writeAims(aims, 'ABCD', tab);
    expect(aimsAt(readAims('ABCD', tab), 1, 'first-right')).toEqual(['stairs', 'bookends']);
    expect(aimsAt(readAims('ABCD', tab), 2, 'first-right')).toEqual([]);
    expect(aimsAt(toggleAim(aims, 1, 'first-right', 'bookends'), 1, 'first-right')).toEqual(['stairs']);
  });

  it('an aim stays from pass to pass until it is changed or taken back, which a reload keeps too', () => {
    const tab = memoryStorage();
    const garden = toggleAim({}, 1, 'first-right', 'garden');
    writeAims(toggleAim(garden, 1, 'second-left', 'garden'), 'ABCD', tab);
    const read = readAims('ABCD', tab);
    const steps = ['first-right', 'first-left', 'second-left', 'courtesy-pass'] as const;
    expect(steps.map((step) => aimsAt(read, 1, step))).toEqual([['garden'], ['garden'], [], []]);
    // A round of the past says of each pass what was said then, and nothing of any other.
    const past = aimsOfRound(1, { 'first-right': ['garden'] });
    expect(steps.map((step) => aimsAt(past, 1, step))).toEqual([['garden'], [], [], []]);
  });

  it('the review says for each aim what the pass did to it', () => {
    const choice = { sectionsInReach: ['stairs', 'bookends'], sectionsInReachAfter: ['bookends'] };
    const sections = { stairs: 'Stairs', bookends: 'Bookends' };
    expect(aimSentences(['stairs', 'bookends', 'two-winds'], choice, sections)).toEqual([
      'Stairs was within reach, and your pass gave it up.',
      'Bookends was within reach, and your pass kept it there.',
      'Two winds was not within reach. Within reach: Stairs and Bookends.',
    ]);
  });
});

describe('numbers in sentences', () => {
  it('a choice that cost nothing is said to have no better one', () => {
    expect(lossSentence(0)).toBe('No better choice was found.');
  });

  it('one tile is never called tiles', () => {
    expect([1, 1.4, 1.5].map(lossSentence).map((sentence) => sentence.split(' worse')[0])).toEqual([
      'About one tile',
      'About one tile',
      'About 2 tiles',
    ]);
  });

  it('the clock shows minutes and seconds and never a negative time', () => {
    expect([65_000, 9_001, 0, -5].map(clockText)).toEqual(['1:05', '0:10', '0:00', '0:00']);
  });
});

describe('the connection in words', () => {
  it('the page is silent while connected, and without a connection says whether a pass waits to be sent', () => {
    const seen = { pendingCount: 0, seen: true, canPlayOn: true };
    const lost = (failures: number, also = {}) =>
      connectionMessage({ kind: 'waiting', failures }, { ...seen, ...also });
    expect(connectionMessage({ kind: 'open' }, seen)).toBeNull();
    const left = { round: 1, step: 'first-left' } as const;
    const here = [false, true].map((isServerBack) =>
      connectionMessage({ kind: 'here', isServerBack, left }, seen),
    );
    expect(here.map((said) => said?.text.split(/[.:]/)[0])).toEqual([
      'You play on here without the server',
      'The server is back',
    ]);
    // A choice that still reached the server has gone on there, so nothing is promised of the tiles (rule G4).
    expect(here[1]?.text).not.toContain('tiles');
    // Where no table was ever seen, the screen says that there is none.
    const gone = { kind: 'ended', reason: 'no-room' } as const;
    expect(connectionMessage(gone, seen)?.text).toBe('There is no table with this code.');
    expect(connectionMessage(gone, { ...seen, seen: false })).toBeNull();
    expect(lost(1)?.text).toContain('Your tiles are safe');
    expect(lost(1, { pendingCount: 1 })?.text).toContain('We’ll send what you chose');
    // Going on without the server is offered once coming back has failed, and only where the round can.
    const offers = [lost(1), lost(2), lost(2, { canPlayOn: false })].map((said) => said?.playOn);
    expect(offers).toEqual([null, 'Play on here', null]);
  });
});

describe('what comes after a review', () => {
  it('says where it leads: to the next deal, to the list of a drill, or to the rounds from which a deal of a class was opened', () => {
    const controls = { held: false, standIn: false, cardClosed: false };
    const room = { kind: 'room', code: 'ABCD2345' } as const;
    const atHome = { kind: 'home-deal', room: 'ABCD2345', round: 2 } as const;
    const words = [
      nextWords('page', {}, room),
      nextWords('server', { controls }, room),
      nextWords('page', { controls }, room),
      nextWords('page', { controls }, atHome),
    ];
    expect(words).toEqual([REVIEW.next, REVIEW.nextInClass, REVIEW.toDeals, REVIEW.toRounds]);
  });
});

describe('a review that is taken along', () => {
  it('says each step once with its verdict, and is read out beginning with the headline', () => {
    const review = reviewRound(records('taken along', 1)[0]!, houseKernel);
    const text = reviewText(review);
    const steps = text.split('\n\n').slice(3);
    expect(steps).toHaveLength(review.choices.length);
    for (const [place, { verdict, sentences }] of review.story.choices.entries()) {
      expect(steps[place]).toContain(`: ${VERDICTS[verdict].name}\n${sentences.join(' ')}`);
    }
    const spoken = spokenSentences(review);
    expect(spoken.slice(0, review.story.headline.length)).toEqual(review.story.headline);
    expect(new Set(spoken).size).toBe(spoken.length);
  });
});
