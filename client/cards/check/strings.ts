// What the check of a card says.

export const CHECK = {
  title: 'Is it a good card?',
  about: 'Deals 2,000 racks in this browser and looks how the card meets them. It takes some seconds.',
  run: 'Check the card',
  again: 'Check it again',
  stop: 'Stop',
  none: 'There is nothing to check until one hand is ready.',
  tooMany: 'It has too many ways to be checked; above is what to do.',
  failed: 'The check could not be made just now. Try again.',
  progress: (done: number, all: number) =>
    `${done.toLocaleString('en-US')} of ${all.toLocaleString('en-US')} racks`,
  hands: (hands: number, ways: number) =>
    `${hands} hands, ${ways.toLocaleString('en-US')} ways to make them.`,
  notReady: (count: number) =>
    count === 1 ? '1 hand is not ready and was left out.' : `${count} hands are not ready and were left out.`,
  toGo: (mean: number) => `From a dealt rack the closest hand is ${mean.toFixed(1)} tiles away, on average.`,
  twice: (one: string, other: string, hands: number) =>
    `${one} and ${other} are the same hand in ${hands === 1 ? '1 way' : `${hands} ways`}.`,
  noneTwice: 'No hand is on it twice.',
  sections: 'How often each section is the closest',
  seldom: 'seldom',
  often: 'very often',
  most: 'Wanted most',
  least: 'Wanted least',
  points: 'Points, and how hard the hand is',
  pointsAbout:
    'Measured: ten points for each tile that is still missing after twelve turns of aiming at the hand alone. A printed card may weigh otherwise.',
  hand: 'Hand',
  own: 'Points',
  measured: 'Measured',
  trust:
    'How far may the review be trusted on this card? What a rack is worth is worked out from the hands of this card, and was proved on cards it had never seen. How other players pass is learned on our own card; how they pass with yours, nobody has measured.',
} as const;
