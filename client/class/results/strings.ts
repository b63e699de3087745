// What the big screen and the report say about the choices of a class.
import { playerCount } from '../model/strings.ts';

export const SPREAD = {
  axisStart: 'best',
  axisEnd: (wins: number) => `${wins} fewer`,
  axisUnit: 'wins in 100 games',
  about: (wins: string) => `about ${wins} fewer ${wins === '1' ? 'win' : 'wins'}`,
  perhaps: (wins: string) => `perhaps ${wins} fewer ${wins === '1' ? 'win' : 'wins'}`,
  isBest: 'the best',
  none: 'as good as the best',
  unknown: '–',
  pending: 'What these cost is being looked at.',
  best: 'Best',
  racksDiffer: 'No cost is shown here, because racks may differ.',
  blind: 'three tiles blind',
  standIns: (players: number) => `A bot chose for ${playerCount(players)}; that is not counted.`,
  hidden: (players: number) =>
    `${playerCount(players)} chose something else. What it was is not shown, to keep choices anonymous.`,
  withheld:
    'There are no numbers here, to keep choices anonymous: too few players chose here, or too few chose alike, or too many.',
  others: (choices: number, players: number) =>
    `${choices} more ${choices === 1 ? 'choice' : 'choices'}, by ${playerCount(players)}.`,
  advancedWith: 'The class continued with',
  aims: 'Sections the players aimed at',
} as const;

export const BIG_SCREEN = {
  join: 'Join with this code',
  at: (host: string) => `on the front page of ${host}`,
  rack: 'The rack',
  racksDiffer: 'Not everybody had the same rack here.',
  choices: 'What the class chose',
  chosen: (chosen: number, players: number) => `${chosen} of ${players} have chosen.`,
  passQuestion: 'What would you pass?',
  question: 'What would you choose?',
  nobody: 'Nobody has chosen here yet.',
  ownComputer:
    'Phones cannot open this page: its address leads to this computer alone. On the dashboard, say under which address they reach it.',
  smaller: 'Smaller text',
  larger: 'Larger text',
} as const;

/** `2 of 8`. */
export function ofPlayers(count: number, players: number): string {
  return `${count} of ${players}`;
}

export const REPORT = {
  title: (drill: string) => `Report of “${drill}”`,
  private: {
    named: 'Only a player’s own review shows what that player held and passed.',
    anonymous:
      'Nobody can tell from this report who chose what. A step is shown with the choices made when you revealed it, or when everybody had chosen; what it cost is shown where everybody held the same rack.',
  },
  notPlayed: 'Nobody has played this deal yet.',
  withheld: 'There are no numbers for this deal, to keep choices anonymous.',
  working: 'Preparing the report…',
  nothing: 'No deal has been played yet.',
  deal: 'Deal',
  toGo: 'Tiles to go on average, as dealt and after the last step',
  steps: 'Step by step',
  mistakes: 'Costliest kinds of mistake',
  category: 'Kind of mistake',
  choices: 'Choices',
  players: 'Players',
  total: 'Wins lost in 100 games, in total',
  pending: 'The choices of this deal are being looked at; open the report again in a moment.',
  notKnown: '–',
  noMistakes: 'No choice was clearly worse than another.',
  byName: 'Player by player',
  byNameAbout: 'Every player was told of this table before the first deal.',
  player: 'Player',
  unfinished: 'not finished',
  playerToGo: 'Tiles to go in each deal, as dealt and after the last step',
  print: 'Print',
  json: 'Save for other programs (JSON)',
  back: 'Back to the dashboard',
  legend: 'How to read this',
  legendLines: [
    'Choices stand from the best down. “2 of 8” are the players who chose so, of those who chose; what bots chose is not counted.',
    'Wins are wins in 100 games, by playing each choice on many times. The line through a dot is how sure that is.',
    'A mistake is a choice with something clearly better; one choice may be several kinds of mistake.',
  ],
} as const;

export const PLAN = {
  title: 'Teach this next',
  pending: 'The choices are still being looked at. The plan comes by itself.',
  nothing: 'No kind of mistake stands out.',
  cost: (choices: number, wins: string) =>
    `${choices === 1 ? '1 choice' : `${choices} choices`}, about ${wins} wins lost in 100 games in total.`,
  noRack: 'There is no rack to show for it. A drill of it has the deals in which it happened.',
  chosen: (players: string) => `${players} passed`,
  better: 'Better:',
  make: 'Make a drill of it',
  notStored: 'This browser does not let the page keep the drill.',
} as const;

export const TABLES = {
  title: 'Save as tables',
  style: 'Tables for a spreadsheet (CSV) that writes',
  styles: { comma: '1.5', semicolon: '1,5' },
  save: { choices: 'Choices', aims: 'Aims', mistakes: 'Mistakes', players: 'Players' },
} as const;
