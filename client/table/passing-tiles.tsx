// The pass that has just happened, drawn once: tiles slide from seat to seat, and one's own arrivals turn over.
import { useState } from 'preact/hooks';
import { type Face, neighbor, type PublicStep, SEATS, type Seat } from '../../shared-engine/index.ts';
import { placeOf } from '../room/seat-names.ts';
import { Tile, TileBack } from '../tiles/tile.tsx';
import { useFramesLater } from '../ui/frames-later.tsx';
import { lastMoved } from './table-facts.ts';

interface PassingTilesProps {
  readonly round: number;
  readonly steps: readonly PublicStep[];
  /** The seat drawn at the bottom. */
  readonly bottom: Seat;
  /** What arrived at the bottom seat, where whoever looks may see it. */
  readonly received: readonly Face[];
}

/** Nothing here is read aloud or can be tapped; with reduced motion it is not shown at all. */
export function PassingTiles({ round, steps, bottom, received }: PassingTilesProps) {
  const key = `${round}:${steps.length}`;
  // Whoever comes in or reloads after a pass does not see it happen again.
  const [before] = useState(key);
  const moved = lastMoved(steps);
  // The table has its change first, then what slides over it, then what turns over at the end of the way.
  const slides = useFramesLater(key, 2) === key;
  const turns = useFramesLater(key, 3) === key;
  if (key === before || !slides || moved === null) return null;
  return (
    <div key={key} class="passing-tiles" aria-hidden="true">
      {SEATS.map((seat) => {
        const to = neighbor(seat, moved.toward);
        // What the bottom seat passed on blind stays face down.
        const shown = to === bottom ? received : [];
        return (
          <span key={seat} class={`packet from-${placeOf(seat, bottom)} to-${placeOf(to, bottom)}`}>
            {shown.map((face, index) => (
              <TurningTile key={`${index}-${face}`} face={face} drawn={turns} />
            ))}
            {Array.from({ length: Math.max(0, moved.counts[seat] - shown.length) }, (_, index) => (
              <i key={index} class="packet-tile packet-back" />
            ))}
          </span>
        );
      })}
    </div>
  );
}

function TurningTile({ face, drawn }: { readonly face: Face; readonly drawn: boolean }) {
  return (
    <span class="packet-tile turning">
      <span class="turning-back">
        <TileBack />
      </span>
      <span class="turning-face">{drawn && <Tile face={face} />}</span>
    </span>
  );
}
