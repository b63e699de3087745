// The five chances of a table as the engine gives them: four seats, then a wall game, adding up to 1.
import { chancesOf, createTableValue } from '../../../shared-engine/analysis/win-probability/table-value.ts';
import type { CompiledCard } from '../../../shared-engine/card/compiled.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import type { Table } from '../../../shared-engine/tools/win-model/games.ts';

export function chancesOn(card: CompiledCard): (table: Pick<Table, 'racks' | 'dealer'>) => readonly number[] {
  const { weight, wall } = createTableValue(card);
  const won = new Float64Array(SEATS.length);
  return ({ racks, dealer }) => {
    const weights = SEATS.map((seat) => weight(racks[seat], 0, (seat + 4 - dealer) % 4));
    chancesOf(weights, wall, won);
    const chances = [...won].map((chance) => chance / 100);
    return [...chances, 1 - chances.reduce((sum, chance) => sum + chance, 0)];
  };
}
