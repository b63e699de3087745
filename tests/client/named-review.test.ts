// Sentences about the players around a seat, with their names where the page knows them.
import { describe, expect, it } from 'vitest';
import { namedReview } from '../../client/review/named-review.ts';
import { neighborNames } from '../../client/room/seat-names.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { playerAt, withNames } from '../../shared-engine/analysis/review/sentences/phrases.ts';
import type { SeatInfo } from '../../shared-engine/protocol/table.ts';
import { DIRECTIONS } from '../../shared-engine/rules/deal/seat.ts';
import { houseKernel, records } from '../kit/reviews.ts';

const bot = (name: string): SeatInfo => ({ kind: 'bot', name, style: 'typical' });
const SEATED = [bot('Ines'), bot('Odo'), bot('Wilma'), bot('Runa')] as const;

describe('what a review says of the players around a seat', () => {
  it('names them from the place of whoever reads', () => {
    expect(neighborNames({ seats: SEATED }, 0)).toEqual({ right: 'Odo', across: 'Wilma', left: 'Runa' });
    expect(neighborNames({ seats: SEATED }, 2)).toEqual({ right: 'Runa', across: 'Ines', left: 'Odo' });
  });

  it('leaves the place of whoever has no name, and takes a name as it stands', () => {
    const names = neighborNames(
      { seats: [SEATED[0], { kind: 'empty' }, bot('the player $&'), SEATED[3]] },
      0,
    );
    const said = `It helped ${playerAt('right')}, ${playerAt('across')} and ${playerAt('left')}.`;
    expect(withNames(said, names)).toBe('It helped the player on the right, the player $& and Runa.');
    expect(withNames('We looked at the player acrossed out.', {})).toBe(
      'We looked at the player acrossed out.',
    );
  });

  it('says the same otherwise, in headline, steps and sums alike', () => {
    const review = reviewRound(records('named', 1)[0]!, houseKernel);
    const said = DIRECTIONS.map((toward) => `It went to ${playerAt(toward)}.`);
    const story = {
      ...review.story,
      headline: said,
      ledger: said,
      choices: review.story.choices.map((choice) => ({ ...choice, sentences: said })),
    };
    const told = namedReview({ ...review, story }, neighborNames({ seats: SEATED }, review.seat));
    const named = ['Odo', 'Wilma', 'Runa'].map((name) => `It went to ${name}.`);
    expect(told.story.headline).toEqual(named);
    expect(told.story.ledger).toEqual(named);
    expect(told.story.choices.map(({ sentences }) => sentences)).toEqual(review.choices.map(() => named));
    expect({ ...told, story: null }).toEqual({ ...review, story: null });
  });
});
