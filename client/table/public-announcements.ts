// A step that is over, as everybody may know it.
import { type PublicStep, SEATS, type Table } from '../../shared-engine/index.ts';
import { nameOf } from '../room/seat-names.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { capitalize, sentenceList } from '../tiles/tile-names.ts';

export function publicAnnouncement(table: Pick<Table, 'seats'>, step: PublicStep): string {
  switch (step.kind) {
    case 'move': {
      const blind = SEATS.filter((seat) => step.blind[seat] > 0).map(
        (seat) => `${nameOf(table, seat)} ${step.blind[seat]}`,
      );
      const blindSentence = blind.length > 0 ? ` Passed blind: ${sentenceList(blind)}.` : '';
      return `${STEP_NAMES[step.step]}: the tiles have moved.${blindSentence}`;
    }
    case 'vote': {
      const stop = SEATS.filter((seat) => !step.go[seat]).map((seat) => nameOf(table, seat));
      return stop.length === 0
        ? 'All four continue.'
        : `${capitalize(sentenceList(stop))} stopped. There is no second Charleston.`;
    }
    case 'ask':
      return `Courtesy: ${sentenceList(
        SEATS.slice(0, 2).map((seat) => {
          const across = SEATS[seat + 2]!;
          return `${nameOf(table, seat)} asked for ${step.asked[seat]} and ${nameOf(table, across)} for ${
            step.asked[across]
          }, so ${step.agreed[seat]} each`;
        }),
      )}.`;
  }
}
