// What is said of a deal while it is prepared: what it deals, how rare it is, whether there is a lesson in it.

export const LOOK = {
  working: 'Working it out…',
  show: 'Show what will be dealt',
  dealt: 'This will be dealt:',
  another: 'Deal another',
  search: 'Look for one with a lesson in it',
  looked: (tried: number, of: number) => `Looked at ${tried} of at most ${of} deals.`,
  cancel: 'Stop looking',
  none: (tried: number) =>
    `In none of ${tried} deals is a first pass clearly better than the usual one. Look once more, or describe it otherwise.`,
  usual: 'Most would pass',
  better: 'Clearly better:',
  ahead: (value: string, low: string, high: string) =>
    `${value} points ahead (${low} to ${high}), a point being one chance in a hundred to be first.`,
} as const;
