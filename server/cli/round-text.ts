// A played round as text for a person to read.
import {
  type Face,
  type Four,
  guessAnswer,
  MOVES,
  methodParts,
  neighbor,
  type Resolved,
  type Review,
  type RoundEvent,
  SEATS,
  type Seat,
  VERDICT_NAMES,
} from '../../shared-engine/index.ts';
import type { PlayedRound } from './played-round.ts';

export function roundText(played: PlayedRound): string {
  const { seed, commitment, card, dealer, racks, toGo, reviews } = played;
  const lines = [
    `Seed        ${seed}`,
    `Commitment  ${commitment}`,
    `Card        ${card.name}`,
    `Dealer      seat ${dealer}`,
    '',
    'Dealt',
    ...rackLines(played, racks.before, toGo.before),
    ...played.log.flatMap(eventLines),
    '',
    'At the close',
    ...rackLines(played, racks.after, toGo.after),
    ...besideEachOther(reviews),
    ...reviews.flatMap((review) => [...reviewLines(review), ...guessLines(review, racks.after)]),
    '',
    'How this was found; “you” is the seat whose review it is.',
    ...new Set(reviews.map(methodText)),
  ];
  return `${lines.join('\n')}\n`;
}

function rackLines({ seats }: PlayedRound, racks: Four<readonly Face[]>, toGo: Four<number>): string[] {
  return SEATS.map(
    (seat) =>
      `  seat ${seat} (${seats[seat]}), ${String(toGo[seat]).padStart(2)} away: ${racks[seat].join(' ')}`,
  );
}

/** A step is printed when it is over; its outcome holds what led up to it. */
function eventLines(event: RoundEvent): string[] {
  return event.kind === 'resolved' ? ['', ...outcomeLines(event.outcome)] : [];
}

function outcomeLines(outcome: Resolved): string[] {
  switch (outcome.kind) {
    case 'vote':
      return [
        'Second Charleston?',
        ...SEATS.map((seat) => `  seat ${seat}: ${outcome.go[seat] ? 'continue' : 'stop'}`),
      ];
    case 'ask':
      return [
        'Courtesy, tiles asked for',
        ...SEATS.map(
          (seat) => `  seat ${seat}: ${outcome.asked[seat]} asked, ${outcome.agreed[seat]} agreed`,
        ),
      ];
    case 'move': {
      const voided = outcome.voided === 0 ? '' : `, ${outcome.voided} of each pass void`;
      return [`${titled(outcome.step)}${voided}`, ...SEATS.map((seat) => moveLine(outcome, seat))];
    }
  }
}

function moveLine(outcome: Resolved & { kind: 'move' }, seat: Seat): string {
  const to = neighbor(seat, MOVES[outcome.step].toward);
  const blind = outcome.forwarded[seat];
  const gave = outcome.gave[seat].join(' ');
  const onward = blind.length === 0 ? '' : `blind ${blind.join(' ')}`;
  const passed = [gave, onward].filter((tiles) => tiles !== '').join(', and ');
  return `  seat ${seat} to seat ${to}: ${passed || 'nothing'}`;
}

/** Why four reviews, each made for one player alone, do not add up. */
function besideEachOther(reviews: Four<Review>): string[] {
  if (reviews.every(({ ledger }) => ledger === null)) return [];
  return [
    '',
    'What a rack is worth is told for one seat alone, which sees only its own tiles and meets club players.',
    'So what the four racks are worth does not add up to 100.',
  ];
}

/** Who the players are that a deep review speaks of, and which verdict rests on that. */
const STYLES_MEANT = [
  'Easy-going players pass about as bots of the style casual do.',
  'Club players are like bots of the style typical, strong players like those of the style strong.',
  'Our steady player is a bot of the style steady.',
  'A costly choice is tried again among easy-going, club and strong players.',
  'If it is costly among none of these, we do not call it costly.',
];

/** How a review was made; of the first look only where a choice is told by it. */
function methodText({ method, choices }: Review): string {
  if (choices.some(({ analysis }) => analysis.depth === 'quick')) return method;
  const parts = methodParts(method).filter(({ kind }) => kind !== 'quick');
  return [...parts.map(({ text }) => text), ...STYLES_MEANT].join(' ');
}

/** Here all racks are shown, so that a guess can be held against them. */
function guessLines({ seat, ledger }: Review, racks: Four<readonly Face[]>): string[] {
  const answer = ledger && guessAnswer(ledger.neighbors, seat, racks);
  return answer === null ? [] : [`  ${answer}`];
}

function reviewLines({ seat, toGoStart, toGoEnd, story, choices }: Review): string[] {
  return [
    '',
    `Review for seat ${seat}: ${toGoStart} away at the start, ${toGoEnd} at the close`,
    `  ${story.headline.join(' ')}`,
    ...story.choices.map(({ verdict, sentences }, nth) => {
      const { step, kind } = choices[nth]!;
      const name = `${titled(step)}${kind === 'blind' ? ', blind' : ''}`;
      return `  ${name}: ${VERDICT_NAMES[verdict]}. ${sentences.join(' ')}`;
    }),
    ...(story.ledger.length > 0 ? [`  Luck and choices: ${story.ledger.join(' ')}`] : []),
  ];
}

function titled(step: string): string {
  const words = step.replace('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
