// From the last that a server's table has told its player to the round as it goes on in the page (rules G1–G3).
import {
  type AnswerChoice,
  type CompiledCard,
  choiceIn,
  createAnalyst,
  forFour,
  possibleRound,
  type SimdModule,
  stepOf,
  type Table,
} from '../../shared-engine/index.ts';
import type { ClientRequest } from '../connection/pending.ts';
import { botsStyle } from '../room/playing-on.ts';
import { seatedAt } from '../room/room.ts';
import type { WentOn } from '../storage/went-on.ts';

interface LastTold {
  readonly table: Table;
  /** What the server has not answered. */
  readonly pending: readonly ClientRequest[];
}

interface Means {
  readonly card: CompiledCard;
  readonly simd: SimdModule;
  readonly seed: string;
}

/** Null where the table is none to go on from, or no deal was found that fits what its seat has seen. */
export function wentOnFrom({ table, pending }: LastTold, { card, simd, seed }: Means): WentOn | null {
  const seated = seatedAt(table);
  const style = botsStyle(table);
  const leftAt = seated && stepOf(seated.view.stage);
  if (seated === null || leftAt === null || style === null) return null;
  const { view, you } = seated;
  const possible = possibleRound(createAnalyst(card, simd).typical, view, seed);
  if (possible === null) return null;
  const own = ownChoice(choiceIn(view), pending, table.round);
  return {
    code: table.code,
    names: forFour((seat) => {
      const info = table.seats[seat];
      return info.kind === 'empty' ? '' : info.name;
    }),
    left: table.round,
    leftAt,
    round: {
      deal: possible.deal,
      seat: you,
      number: table.round,
      style,
      terms: table.terms,
      card: card.id,
      answers: own === null ? [] : [own],
      outcomes: possible.outcomes,
    },
  };
}

/** The answer to the open step: as the server knew it, and then as it was changed without a connection. */
function ownChoice(
  known: AnswerChoice | null,
  pending: readonly ClientRequest[],
  round: number,
): AnswerChoice | null {
  return pending.reduce((last, request) => {
    if (request.kind !== 'choose' || request.round !== round) return last;
    return request.choice.kind === 'withdraw' ? null : request.choice;
  }, known);
}
