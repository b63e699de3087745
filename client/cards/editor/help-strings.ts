// How hands are typed: one page of help.

export const TYPING = {
  title: 'How hands are typed',
  about:
    'A hand is one line: its groups with a blank between them, then its points. A group is how many, 1 to 6, and which tile, without a blank. Jokers are not typed: they may stand in any group of three or more. Press Enter for the next hand.',
  signs: 'The signs',
  rows: [
    [
      '3a 3a+2',
      'three of some number, and three of the number two above it. a+1 is the next one, a-1 the one below; the plus may be left out. A row stays within 1 to 9 by itself.',
    ],
    ['3a 3b', 'three of some number, and three of any other number; c is a third one'],
    ['2x5', 'a pair of fives, exactly'],
    ['/', 'from here on another suit than before. The first suit needs no sign.'],
    ['/1   /2', 'back to the first suit, or to the second'],
    ['/bam   /crak   /dot', 'that suit, exactly'],
    ['3match', 'three dragons that go with the suit you are in'],
    ['3dragon   3dragon2', 'three of any dragon, and three of another one'],
    ['3green   3red   3soap', 'three of that dragon'],
    ['4wind   4wind2', 'four of any wind, and four of another one'],
    ['2east   2south   2west   2north', 'a pair of that wind'],
    ['2flower   2zero', 'a pair of flowers; two soaps as zeros'],
    ['2year1 … 2year4', 'two of the first to fourth digit of the card’s year; its 0 is soap'],
    ['a=1-4   a=2,4', 'a is one of these only; b and c have limits of their own'],
    [
      'wind=east,west   suit=bam,dot   dragon=red,soap',
      'only these; for the second one wind2=, suit2= or dragon2=, which may be the same words',
    ],
    ['30', 'thirty points; 25 where you type none'],
    ['concealed', 'the hand is concealed'],
  ],
  wholeHands: 'Whole hands',
  hands: [
    ['3a 3a+1 4a+2 4f 30', 'three numbers in a row in one suit, with four flowers'],
    ['3a 4a+1 / 3a 4a+1 35', 'a number three times and the next one four times, the same in two suits'],
    [
      '2a 3match / 2a 3match / 2a 2match 50 c',
      'a pair of one number in every suit, with its dragons; concealed',
    ],
  ],
  pad: 'Words may be cut short: f for flower, m for match, wi for wind, sou for south, c for concealed. Or lay the hand with tiles, and answer what it means: typing and laying are the same hand.',
} as const;
