// What can be done with the whole table: a step back, another rack, a drill for a class.
import type { LaidExchange } from '../../../shared-engine/index.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import { fileName, saveFile } from '../../ui/save-file.ts';
import { dropRound } from '../history/keep-rounds.ts';
import { drillOfTable } from './drill-of-table.ts';
import { laidRoundId } from './laid-round.ts';
import { EMPTY_TABLE, type OwnTable } from './own-table.ts';
import { OWN_TILES } from './strings.ts';

interface TableButtonsProps {
  readonly storage: TextStorage;
  readonly newSeed: () => string;
  readonly own: OwnTable;
  readonly exchange: LaidExchange;
  readonly onChange: (own: OwnTable) => void;
  /** The last step is taken back. */
  readonly onBack: () => void;
}

export function TableButtons({ storage, newSeed, own, exchange, onChange, onBack }: TableButtonsProps) {
  const { entries } = own;
  function back() {
    onBack();
    // An exchange that goes on again is no round of the past.
    if (exchange.stage.phase === 'closed') void dropRound(laidRoundId(exchange), storage);
    onChange(entries.length === 0 ? { ...own, begun: false } : { ...own, entries: entries.slice(0, -1) });
  }
  function saveDrill() {
    const drill = drillOfTable(own, exchange, newSeed());
    saveFile(`${fileName(drill.title)}.json`, 'application/json', JSON.stringify(drill, null, 2));
  }
  return (
    <>
      <div class="row">
        <button type="button" onClick={back}>
          {OWN_TILES.back}
        </button>
        <button type="button" onClick={() => onChange({ ...EMPTY_TABLE, table: own.table })}>
          {OWN_TILES.again}
        </button>
        <button type="button" onClick={saveDrill}>
          {OWN_TILES.drill}
        </button>
      </div>
      <p class="aside">{OWN_TILES.drillAbout}</p>
    </>
  );
}
