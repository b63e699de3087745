// The rack from the table as a drill of one deal, for a class to practice on.
import { type Drill, type Face, type Four, forFour } from '../../../shared-engine/index.ts';
import type { OwnTable } from './own-table.ts';
import { OWN_SEAT, OWN_TILES } from './strings.ts';

/** Everybody plays the rack as it was dealt; the seed deals the other racks and decides what their bots draw. */
export function drillOfTable({ table, tiles }: OwnTable, seed: string): Drill {
  const racks: Four<readonly Face[]> = forFour((seat) => (seat === OWN_SEAT ? tiles : []));
  const { secondCharleston, blindPasses, courtesy, cardHelp, passLog } = table.terms;
  return {
    format: 'quadrille-drill/1',
    title: OWN_TILES.drillTitle,
    form: 'alone',
    ways: { secondCharleston, blindPasses, courtesy, cardHelp, passLog },
    bots: { styles: ['typical', 'typical', 'typical'], seed },
    deals: [{ id: 'deal-1', seat: OWN_SEAT, dealer: table.dealer, tiles: { kind: 'manual', racks, seed } }],
  };
}
