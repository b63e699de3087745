// The player's own rack: large tiles, moved by tap, drag or keyboard, in the order the player likes.
import { useRef, useState } from 'preact/hooks';
import { inDisplayOrder, type RackTile, SORTS } from '../room/rack-layout.ts';
import type { Room } from '../room/room.ts';
import { Tile, TileToCome } from '../tiles/tile.tsx';
import { tileName } from '../tiles/tile-names.ts';
import { useFramesLater } from '../ui/frames-later.tsx';
import { startDrag } from './drag.ts';
import { keyTarget } from './rack-keys.ts';
import { TABLE } from './strings.ts';

interface RackProps {
  readonly room: Room;
  /** Whether this seat is East in this round. */
  readonly east: boolean;
  /** Whether this table plays without the card. */
  readonly cardClosed: boolean;
}

export function Rack({ room, east, cardClosed }: RackProps) {
  const { layout: now, cardOpen } = room.state.value;
  const step = `${now.round}/${now.steps}`;
  // The table has its change first, then the rack; what arrives is still on its way and is drawn a frame later again.
  const before = useRef(now);
  const isDue = useFramesLater(step, 1) === step;
  if (isDue) before.current = now;
  const isHere = useFramesLater(step, 4) === step;
  const layout = before.current;
  const tiles = inDisplayOrder(layout);
  const list = useRef<HTMLDivElement>(null);
  const [current, setCurrent] = useState<number | null>(null);
  // The browser ends a drag with a click, which must not count as a tap.
  const dragged = useRef(false);
  const active = tiles.some((tile) => tile.id === current) ? current : (tiles[0]?.id ?? null);

  function onKeyDown(event: KeyboardEvent) {
    if (active === null || !list.current) return;
    const target = keyTarget(event.key, active, list.current);
    if (target === null) return;
    event.preventDefault();
    if (event.shiftKey) {
      room.moveTile(active, placeAfterMove(tiles, active, target));
      return;
    }
    setCurrent(target);
    list.current.querySelector<HTMLElement>(`[data-tile="${target}"]`)?.focus();
  }

  function onPointerDown(event: PointerEvent, tile: RackTile) {
    dragged.current = false;
    startDrag(event, {
      began: () => {
        dragged.current = true;
      },
      droppedOn: (drop) => {
        const inTray = room.state.value.layout.tray.includes(tile.id);
        if (drop.kind === 'tray' && !inTray) room.toggleTile(tile.id);
        if (drop.kind === 'tile' && drop.id !== tile.id) {
          const order = inDisplayOrder(room.state.value.layout).filter(({ id }) => id !== tile.id);
          const at = order.findIndex(({ id }) => id === drop.id) + (drop.after ? 1 : 0);
          room.moveTile(tile.id, order[at]?.id ?? null);
        }
      },
    });
  }

  return (
    <section class="rack-area" aria-labelledby="rack-title">
      <div class="rack-head">
        <h2 id="rack-title">{TABLE.rack}</h2>
        {east && <span class="east">{TABLE.youAreEast}</span>}
        {cardClosed ? (
          <span class="aside">{TABLE.cardClosed}</span>
        ) : (
          <button
            type="button"
            class="card-button"
            aria-expanded={cardOpen}
            onClick={() => {
              room.showCard(!cardOpen);
              if (!cardOpen) requestAnimationFrame(showCardTitle);
            }}
          >
            {TABLE.card}
          </button>
        )}
        <fieldset class="sorts">
          <legend class="spoken">{TABLE.sort}</legend>
          {SORTS.map((sort) => (
            <label key={sort} class="choice pill">
              <input
                type="radio"
                name="sort"
                checked={layout.sort === sort}
                onChange={() => room.sortBy(sort)}
              />
              <span>{TABLE.sorts[sort]}</span>
            </label>
          ))}
        </fieldset>
      </div>
      <div
        ref={list}
        class="rack"
        role="toolbar"
        aria-label={TABLE.rack}
        aria-busy={!isDue}
        aria-describedby="rack-about"
        onKeyDown={onKeyDown}
      >
        {tiles.map((tile) => {
          const inTray = layout.tray.includes(tile.id);
          return (
            <button
              key={tile.id}
              type="button"
              class={`rack-tile${inTray ? ' lifted' : ''}${tile.arrived ? ' arrived' : ''}`}
              data-tile={tile.id}
              aria-pressed={inTray}
              aria-label={tileLabel(tile, inTray)}
              tabIndex={tile.id === active ? 0 : -1}
              onFocus={() => setCurrent(tile.id)}
              onPointerDown={(event) => onPointerDown(event, tile)}
              onClick={() => {
                if (!dragged.current) room.toggleTile(tile.id);
                dragged.current = false;
              }}
            >
              {tile.arrived && !isHere ? <TileToCome /> : <Tile face={tile.face} />}
            </button>
          );
        })}
      </div>
      <p id="rack-about" class="spoken">
        {TABLE.rackAbout}
      </p>
    </section>
  );
}

function tileLabel(tile: RackTile, inTray: boolean): string {
  return [tileName(tile.face), tile.arrived ? TABLE.arrived : '', inTray ? TABLE.inTray : '']
    .filter(Boolean)
    .join(', ');
}

/** In front of which tile `moved` has to go so that it lands where `target` is. */
function placeAfterMove(tiles: readonly RackTile[], moved: number, target: number): number | null {
  const from = tiles.findIndex(({ id }) => id === moved);
  const to = tiles.findIndex(({ id }) => id === target);
  return (from < to ? tiles[to + 1]?.id : target) ?? null;
}

/** On a phone the card opens below the rack, where nobody would see that anything has happened. */
function showCardTitle(): void {
  const title = document.getElementById('card-title');
  if (title && title.getBoundingClientRect().bottom > window.innerHeight)
    title.scrollIntoView({ block: 'center' });
}
