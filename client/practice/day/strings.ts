// What the page says about the deal of the day.

export const DAY = {
  title: 'Deal of the day',
  about:
    'One deal a day: the same tiles, the same three bots and the house card for everybody. It works without a network.',
  today: 'Play today’s deal',
  again: 'Play it again',
  earlier: 'The days before',
  notPlayed: 'Not played yet',
  more: 'Show earlier days',
  above: (day: string) => `Deal of ${day}, the same for everybody.`,
  review: (found: string) => `Review: ${found.toLowerCase()}`,
  all: 'All days',
} as const;
