// What the page says about the data stored about a person, and which of them each button deletes.
import { describe, expect, it } from 'vitest';
import { deletedTogether, entryText } from '../../client/privacy/strings.ts';

describe('your data', () => {
  it('an entry is written in words, without what says nothing', () => {
    const entry = {
      at: 0,
      what: 'passed',
      step: 'first-right',
      tiles: ['bam-1', 'joker'],
      blind: 0,
      by: 'player',
      seat: 2,
    };
    expect(entryText(entry)).toMatch(/: passed, First right, 1 bam and joker, seat 3$/);
    expect(entryText({ at: 0, what: 'sat down', name: 'Ines' })).toMatch(/: sat down, name Ines$/);
  });

  it('a counted round is told with its choices and questions, and what deleting it means', () => {
    const round = {
      at: 0,
      what: 'a round was counted',
      deal: 'deal-1',
      choices: {
        'first-right': 'bam-1 dot-4 west',
        'first-left': '1:bam-1 west',
        vote: '1',
        'courtesy-ask': '0',
      },
      questions: [{ step: 'vote', text: 'Why?' }],
      name: null,
    };
    expect(entryText(round)).toMatch(
      /counted, deal deal-1, First right: 1 bam, 4 dot and west.*; First left: 1 bam and west.*, 1 blind; .*: Continue; Courtesy: No tiles, asked “Why\?”$/,
    );
    const buttons = (...what: string[]) =>
      deletedTogether(what.map((one) => ({ at: 0, what: one }))).map(({ words: { name }, only }) => [
        name,
        only,
      ]);
    expect(buttons('sat down')).toEqual([['Delete my data', undefined]]);
    // A player's own path: it never deletes the class, whoever leads it.
    expect(buttons('joined the class', 'sat down')).toEqual([['Delete my data', '/player']]);
    expect(buttons('opened the class')).toEqual([['Delete this class', undefined]]);
    // A teacher who has played the drill deletes the own data alone, or all of it.
    expect(buttons('published the drill', 'a round was counted', 'a round was counted')).toEqual([
      ['Delete my data', '/device'],
      ['Delete this drill', undefined],
    ]);
  });
});
