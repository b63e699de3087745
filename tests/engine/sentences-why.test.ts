// What is said of where two choices lead: the tile that matters, the sections, and what differs where no reason stands out.
import { describe, expect, test } from 'vitest';
import type { Verdict } from '../../shared-engine/analysis/comparison/verdict.ts';
import type { NumberReview } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { leadSentences } from '../../shared-engine/analysis/review/sentences/leads.ts';
import { numberWhy } from '../../shared-engine/analysis/review/sentences/number.ts';
import { whySentences } from '../../shared-engine/analysis/review/sentences/why.ts';
import type { ChoiceWhy } from '../../shared-engine/analysis/why/choice-why.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
import { houseKernel, records } from '../kit/reviews.ts';

const [RECORD] = records('why words', 1) as [ReturnType<typeof records>[number]];

describe('the words of a reason', () => {
  const NOTHING: ChoiceWhy = {
    deals: 128,
    reason: null,
    keep: [{ face: 'white', copies: 1, share: 0.4 }],
    pass: [{ face: 'red', copies: 1, share: 0.4 }],
    farther: null,
    sections: { stairs: { played: 0.3, named: 0.4 } },
    sectionsKept: { played: 2, named: 2 },
    toGoKept: { played: 4, named: 4 },
    toGo: { played: 3.2, named: 3.1 },
    lacking: { played: 2, named: 1.9 },
    gone: { played: 1, named: 1 },
    idleJokers: { played: 0.2, named: 0.2 },
    handsNear: { played: 3, named: 3.2 },
    points: { played: 8, named: 8 },
    concealed: { played: 0.3, named: 0.3 },
  };
  const NAMES = { stairs: 'Stairs', garden: 'Garden' };
  const said = (why: Partial<ChoiceWhy>, verdict: Verdict = 'a-little-worse') =>
    whySentences({ ...NOTHING, ...why }, NAMES, { whose: 'your', verdict });

  test('are none where nothing differs clearly', () => {
    expect(said({})).toEqual([]);
  });

  test('name the tile to keep where it is the reason, with how many of the closest hands use it', () => {
    const keep = [
      { face: 'white', copies: 1, share: 0.81 },
      { face: 'bam-3', copies: 2, share: 0.9 },
    ] as const;
    const single = { keep: keep.slice(0, 1), pass: [{ face: 'red', copies: 1, share: 0.12 }] } as const;
    expect(said({ ...single, reason: { keep: 'white', pass: 'red', share: 1 } })).toEqual([
      'Keep the soap: 8 in 10 of your closest hands at the close use it; 1 in 10 use the red dragon.',
    ]);
    expect(said({ keep, reason: { keep: 'white', pass: 'red', share: 0.7 } })).toEqual([
      'Keep the soap: 8 in 10 of your closest hands at the close use it; 4 in 10 use the red dragon.',
      'Keeping it makes at least half of the difference.',
    ]);
    // Nor does a tile beside one that most hands use as well.
    const used = { ...single, pass: [{ face: 'red', copies: 1, share: 0.61 }] } as const;
    expect(said({ ...used, reason: { keep: 'white', pass: 'red', share: 1 } })).toEqual([]);
    // A tile that few hands use explains little, whatever keeping it brings.
    const rare = [{ face: 'white', copies: 1, share: 0.2 }, keep[1]] as const;
    expect(
      said({
        keep: rare,
        pass: [{ face: 'red', copies: 1, share: 0 }],
        reason: { keep: 'white', pass: 'red', share: 1 },
      }),
    ).toEqual([
      'One tile makes at least half of the difference: keeping the soap instead of the red dragon.',
    ]);
    // Two groups by name would make one sentence too long.
    const [, pair] = keep;
    expect(
      said({
        keep: [pair],
        pass: [{ face: 'crak-7', copies: 2, share: 0.3 }],
        reason: { keep: 'bam-3', pass: 'crak-7', share: 1 },
      }),
    ).toEqual([
      'Keep your pair of 3 bam: 9 in 10 of your closest hands at the close use it.',
      '3 in 10 use a pair of 7 crak.',
    ]);
    // Where no tile is the reason, what differs is told and nothing is advised.
    expect(said({ keep, pass: [{ face: 'dot-9', copies: 1, share: 0.04 }] })).toEqual([
      '9 in 10 of your closest hands at the close use your pair of 3 bam; hardly any use 9 dot.',
    ]);
  });

  test('name the one tile where its use does not', () => {
    const keep = [
      { face: 'white', copies: 1, share: 0.4 },
      { face: 'bam-3', copies: 1, share: 0.3 },
    ] as const;
    const reason = { keep: 'white', pass: 'red', share: 0.7 } as const;
    const told =
      'One tile makes at least half of the difference: keeping the soap instead of the red dragon.';
    expect(said({ keep, reason })).toEqual([told]);
    // It tells what, not why: what differs at the end comes first.
    expect(said({ keep, reason, toGo: { played: 3.9, named: 3.2 } })).toEqual([
      'Your rack then ends 3.2 away on average, not 3.9.',
      told,
    ]);
    // A pair that is kept is a pair, and a tile that goes from a pair one of two.
    const pair = [{ face: 'white', copies: 2, share: 0.4 }, keep[1]] as const;
    const two = [{ face: 'red', copies: 2, share: 0.4 }] as const;
    expect(said({ keep: pair, pass: two, reason })).toEqual([
      'One tile makes at least half of the difference: keeping your pair of soaps instead of one red dragon.',
    ]);
  });

  test('of a costly choice always say which section it leads to, where anything is said', () => {
    const sections = { stairs: { played: 0.5, named: 0.4 }, garden: { played: 0.1, named: 0.2 } };
    const toGo = { played: 3.9, named: 3.2 };
    const ends = 'Your rack then ends 3.2 away on average, not 3.9.';
    expect(said({ sections, toGo })).toEqual([ends]);
    expect(said({ sections, toGo }, 'costly')).toEqual([
      ends,
      'Either way your rack most often ends closest to Stairs.',
    ]);
    const turned = { stairs: { played: 0.5, named: 0.3 }, garden: { played: 0.3, named: 0.4 } };
    expect(said({ sections: turned, toGo }, 'costly')[1]).toBe(
      'Your rack then most often ends closest to Garden, not to Stairs.',
    );
    expect(said({ sections }, 'costly')).toEqual([]);
    expect(said({ sections: {}, toGo }, 'costly')).toEqual([ends]);
  });

  test('say of a bot what is worth keeping, for nobody who reads it keeps its tiles', () => {
    const why: ChoiceWhy = {
      ...NOTHING,
      keep: [{ face: 'bam-3', copies: 2, share: 0.9 }],
      pass: [{ face: 'red', copies: 1, share: 0.12 }],
      reason: { keep: 'bam-3', pass: 'red', share: 1 },
    };
    expect(whySentences(why, NAMES, { whose: 'its', verdict: 'a-little-worse' })).toEqual([
      'Its pair of 3 bam is worth keeping: 9 in 10 of its closest hands at the close use it.',
      '1 in 10 use the red dragon.',
    ]);
  });

  test('are where the two lead, where no reason stands out', () => {
    const vote = reviewRound(RECORD, houseKernel).choices.find(
      (choice): choice is NumberReview => choice.kind === 'vote',
    )!;
    const stairs = 'Either way your rack most often ends closest to Stairs.';
    const analysis = sampleDeepAnalysis('a-little-worse');
    const NO_ONE = 'We found no one reason for that.';
    const reasons = (why: Partial<ChoiceWhy>, told = analysis) =>
      numberWhy({ ...vote, analysis: { ...told, why: { ...NOTHING, ...why } } }, NAMES);
    expect(reasons({}, sampleDeepAnalysis('cant-say'))).toHaveLength(2);
    expect(reasons({})).toEqual([
      NO_ONE,
      'Your rack then ends about as far away: 3.1 on average, against 3.2.',
      stairs,
    ]);
    expect(reasons({ toGo: { played: 3.21, named: 3.19 } })).toEqual([
      NO_ONE,
      'Either way your rack ends about 3.2 away on average, most often closest to Stairs.',
    ]);
    expect(reasons({ toGo: { played: 3.2, named: 3.3 } })[1]).toBe(
      'Your rack then ends about as far away: 3.3 on average, against 3.2.',
    );
    const turned = { stairs: { played: 0.5, named: 0.3 }, garden: { played: 0.3, named: 0.4 } };
    expect(reasons({ sections: turned }).at(-1)).toBe(
      'It is then most often closest to Garden, not to Stairs.',
    );
    const farther = { toGo: { played: 3.2, named: 3.6 } };
    const still = 'Your rack then ends farther away, 3.6 on average, not 3.2, and still wins more often.';
    expect(reasons(farther)).toEqual([NO_ONE, still, stairs]);
    // What the better vote costs the others is why.
    const costs = { value: -2.3, halfWidth: 0.4 };
    expect(
      numberWhy(
        { ...vote, analysis: { ...analysis, others: costs, why: { ...NOTHING, ...farther } } },
        NAMES,
      ),
    ).toEqual([
      expect.stringMatching(/ would cost the other three about 2\.3 wins in 100 games between them\.$/),
      still,
      stairs,
    ]);
    // Less surely, a vote to stop at least costs them the passes.
    const votes = analysis.finalists.map((one, place) => ({ ...one, number: 1 - place }));
    const unsure = { ...analysis, finalists: votes, others: { value: -0.5, halfWidth: 0.8 } };
    expect(numberWhy({ ...vote, analysis: { ...unsure, why: { ...NOTHING, ...farther } } }, NAMES)).toEqual([
      'Stopping keeps the other three from a second Charleston too.',
      still,
      stairs,
    ]);
    expect(reasons({ lacking: { played: 2.34, named: 2 } })[0]).toBe(
      'Slightly fewer tiles are then missing in pairs and singles, where no joker helps: 2.0 on average, not 2.3.',
    );
    expect(reasons({ gone: { played: 0.74, named: 0.5 } })[0]).toBe(
      'The others then hold slightly fewer of the tiles that your closest hands need: 0.5 on average, not 0.7.',
    );
    expect(reasons({ idleJokers: { played: 0.3, named: 0.04 } })[0]).toBe(
      'Slightly fewer jokers are then left over, as pairs and singles take none: hardly any, not 0.3 on average.',
    );
    expect(reasons({ sectionsKept: { played: 3, named: 5 } })[0]).toBe(
      'With the better pass, 5 sections of the card keep a hand within a tile of the closest; with the pass made, only 3.',
    );
    expect(reasons({ sectionsKept: { played: 0, named: 1 } })[0]).toBe(
      'With the better pass, 1 section of the card keeps a hand within a tile of the closest; with the pass made, none.',
    );
    const next = { keep: 'white', pass: 'red', section: 'garden' } as const;
    expect(reasons({ farther: { ...next, shares: { played: 0.04, named: 0.41 } } }).slice(0, 2)).toEqual([
      'Among hands one tile farther away than your closest, 4 in 10 use the soap, most of them in Garden.',
      'Hardly any use the red dragon.',
    ]);
    // A difference that rounding may make is none.
    expect(reasons({ farther: { ...next, shares: { played: 0.34, named: 0.41 } } })).toEqual(reasons({}));
    expect(reasons({ handsNear: { played: 3, named: 3.4 } })[0]).toBe(
      'Slightly more hands are then among your closest, or only one tile farther away: 3.4 hands on average, not 3.0.',
    );
    // More are near where all of them are farther away.
    expect(reasons({ ...farther, handsNear: { played: 3, named: 3.9 } })).toEqual([NO_ONE, still, stairs]);
    // A rack that ends farther away than it was lost what it needed later on, in passes that are played simply.
    const lost = { toGo: { played: 4.5, named: 4.2 }, toGoKept: { played: 4, named: 4 } };
    expect(reasons(lost)).toEqual([NO_ONE, stairs]);
    expect(reasons({ ...lost, sections: {} })).toEqual([NO_ONE]);
    expect(reasons({ toGo: { played: 3.9, named: 3.2 } })).toEqual([
      'Your rack then ends 3.2 away on average, not 3.9.',
    ]);
    // Of tiles asked for as many are given.
    const finalists = analysis.finalists.map((one) => ({ ...one, number: 2 }));
    const asked = (played: number, why = NOTHING) =>
      numberWhy({ ...vote, kind: 'ask', played, analysis: { ...analysis, finalists, why } }, NAMES).join(' ');
    expect(asked(3)).toMatch(/^Fewer tiles can then go to the player across\./);
    // That more tiles come when more are asked for goes without saying.
    expect(asked(1)).toMatch(/^We found no one reason for that\. Your rack then ends about as far away/);
    // Whoever asks for nothing keeps the rack: how it stands between sections is no share of games.
    const half = { ...NOTHING, sections: { stairs: { played: 0.2, named: 0.6 } } };
    expect([asked(1, half), asked(0, half)]).toEqual([
      expect.stringMatching(/closest to Stairs more often/),
      expect.not.stringContaining('closest to'),
    ]);
    const blind = (played: number, why = NOTHING) =>
      numberWhy({ ...vote, kind: 'blind', played, analysis: { ...analysis, finalists, why } }, NAMES).join(
        ' ',
      );
    expect(blind(0)).toMatch(/^Fewer of your own tiles are then passed\./);
    expect(blind(3)).toMatch(/^Good tiles among those that arrive can then stay\./);
    // That is no reason where the rack is not the closer for it.
    for (const toGo of [farther.toGo, { played: 3.21, named: 3.19 }]) {
      for (const number of [asked, blind]) {
        for (const played of [0, 3])
          expect(number(played, { ...NOTHING, toGo })).toMatch(
            /^We found no one reason .* rack (then )?ends /,
          );
      }
    }
    expect(leadSentences({ ...NOTHING, sections: {} }, NAMES, 'its')).toEqual([
      'Its rack then ends about as far away: 3.1 on average, against 3.2.',
    ]);
  });

  test('tell of hands that come near, where they are more than the tiles they are farther away take back', () => {
    const near = (named: number, toGo = NOTHING.toGo): readonly string[] =>
      said({ handsNear: { played: 4.2, named }, toGo, toGoKept: { played: 6, named: 6 } });
    expect(near(6.4)).toEqual([
      'More hands are then among your closest, or only one tile farther away: about 6 hands, not 4.',
    ]);
    expect(near(5.2)).toEqual([]);
    // Half a tile farther away, a hand counts half as much.
    const farther = { played: 4.1, named: 4.6 };
    expect(near(8, farther)).toEqual([]);
    // More than a tile farther away, it is no reason at all.
    expect(near(30, { played: 4.1, named: 5.2 })).toEqual([]);
    expect(near(11.8, farther)).toEqual([
      'Your rack then ends farther away, 4.6 on average, not 4.1, but more hands are closest or one tile farther away: 12, not 4.',
    ]);
  });

  test('tell where the better choice ends clearly farther away, whatever speaks for it', () => {
    const fewer = { lacking: { played: 4.8, named: 2.3 }, toGoKept: { played: 5, named: 7 } };
    const lack =
      'Fewer tiles are then missing in pairs and singles, where no joker helps: 2.3 on average, not 4.8.';
    expect(said({ ...fewer, toGo: { played: 4.8, named: 6.7 } })).toEqual([
      lack,
      'Yet your rack then ends farther away, 6.7 on average, not 4.8.',
    ]);
    expect(said({ ...fewer, toGo: { played: 4.8, named: 5 } })).toEqual([lack]);
    // Unless it says nothing of this choice.
    expect(said({ ...fewer, toGo: { played: 5.3, named: 6.7 } })).toEqual([lack]);
  });

  test('say where the two passes lead, three reasons at most', () => {
    const lead = {
      sections: { stairs: { played: 0.2, named: 0.5 } },
      toGo: { played: 3.9, named: 3.2 },
      lacking: { played: 2.6, named: 1.8 },
      concealed: { played: 0.9, named: 0.1 },
    };
    expect(said(lead)).toEqual([
      'Your rack then ends 3.2 away on average, not 3.9.',
      'It is then closest to Stairs more often: 5 in 10 games instead of 2.',
      'Fewer tiles are then missing in pairs and singles, where no joker helps: 1.8 on average, not 2.6.',
    ]);
    expect(said({ idleJokers: { played: 0.9, named: 0.5 }, gone: { played: 1.5, named: 1.1 } })).toEqual([
      'Fewer jokers are then left over, as pairs and singles take none: 0.5 on average, not 0.9.',
      'The others then hold fewer of the tiles that your closest hands need: 1.1 on average, not 1.5.',
    ]);
    expect(said({ idleJokers: { played: 0.4, named: 0.04 } })).toEqual([
      'Fewer jokers are then left over, as pairs and singles take none: hardly any, not 0.4 on average.',
    ]);
    expect(said({ sections: { stairs: { played: 0.04, named: 0.97 } } })).toEqual([
      'Your rack then ends closest to Stairs more often: in nearly all games instead of hardly any.',
    ]);
    // Few games in a section say little of where a pass leads.
    expect(said({ sections: { garden: { played: 0.01, named: 0.24 } } })).toEqual([]);
    expect(said({ concealed: lead.concealed })).toEqual([
      'Fewer of your closest hands must then stay concealed: 1 in 10 instead of 9.',
    ]);
  });
});
