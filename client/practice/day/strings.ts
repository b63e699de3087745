// What the page says about the deal of the day.

export const DAY = {
  title: 'Deal of the day',
  about: 'One deal a day: the same tiles and the same three bots for everybody. It works without a network.',
  card: (name: string | null) =>
    name === null
      ? 'You play it on the house card, as most do.'
      : `You play it on ${name}, the card you have chosen; the bots pass for that card too.`,
  today: 'Play today’s deal',
  again: 'Play it again',
  earlier: 'The days before',
  notPlayed: 'Not played yet',
  more: 'Show earlier days',
  above: (day: string) => `Deal of ${day}, the same for everybody.`,
  review: (found: string) => `Review: ${found.toLowerCase()}`,
  all: 'All days',
} as const;
