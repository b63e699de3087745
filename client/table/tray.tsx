// The tray: a place for each tile of the pass, filled by tap, drag or keyboard.
import type { OpenPass } from '../room/open-pass.ts';
import type { RackTile } from '../room/rack-layout.ts';
import type { Room } from '../room/room.ts';
import { Tile, TileBack } from '../tiles/tile.tsx';
import { tileName } from '../tiles/tile-names.ts';
import { TABLE } from './strings.ts';

export function Tray({ room, pass }: { readonly room: Room; readonly pass: OpenPass }) {
  const { layout } = room.state.value;
  const tiles = layout.tray.flatMap((id) => layout.tiles.find((tile) => tile.id === id) ?? []);
  const empty = Math.max(0, pass.needed - tiles.length - layout.blind);
  return (
    <fieldset class="tray" data-drop="tray">
      <legend class="spoken">{TABLE.tray}</legend>
      {tiles.map((tile, slot) => (
        <Slot key={tile.id} room={room} tile={tile} slot={slot} submitted={pass.submitted} />
      ))}
      {Array.from({ length: layout.blind }, (_, index) => (
        <div key={`blind-${index + 1}`} class="slot">
          <TileBack />
          <span class="spoken">{TABLE.slotBlind}</span>
        </div>
      ))}
      {Array.from({ length: empty }, (_, index) => (
        <div key={`empty-${index + 1}`} class="slot empty">
          <span class="spoken">{TABLE.slotEmpty}</span>
        </div>
      ))}
    </fieldset>
  );
}

interface SlotProps {
  readonly room: Room;
  readonly tile: RackTile;
  readonly slot: number;
  readonly submitted: boolean;
}

function Slot({ room, tile, slot, submitted }: SlotProps) {
  if (submitted) {
    return (
      <div class="slot">
        <Tile face={tile.face} />
        <span class="spoken">{tileName(tile.face)}</span>
      </div>
    );
  }
  return (
    <button
      type="button"
      class="slot"
      aria-label={TABLE.takeBackSlot(tileName(tile.face), slot + 1)}
      onClick={() => room.toggleTile(tile.id)}
    >
      <Tile face={tile.face} />
    </button>
  );
}
