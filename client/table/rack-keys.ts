// Where an arrow key leads on a rack that may fill several rows.

/** The tile that `key` leads to from tile `active`, or null when the key is none of ours. */
export function keyTarget(key: string, active: number, rack: HTMLElement): number | null {
  const tiles = [...rack.querySelectorAll<HTMLElement>('[data-tile]')];
  const at = tiles.findIndex((tile) => idOf(tile) === active);
  const here = tiles[at];
  if (!here) return null;
  switch (key) {
    case 'ArrowRight':
      return idOf(tiles[at + 1] ?? here);
    case 'ArrowLeft':
      return idOf(tiles[at - 1] ?? here);
    case 'Home':
      return idOf(tiles[0] ?? here);
    case 'End':
      return idOf(tiles.at(-1) ?? here);
    case 'ArrowDown':
      return idOf(tiles.find((tile) => below(here, tile) && sameColumn(here, tile)) ?? here);
    case 'ArrowUp':
      return idOf(tiles.findLast((tile) => below(tile, here) && sameColumn(here, tile)) ?? here);
    default:
      return null;
  }
}

function idOf(tile: HTMLElement): number {
  return Number(tile.dataset.tile);
}

function below(upper: HTMLElement, lower: HTMLElement): boolean {
  return lower.offsetTop > upper.offsetTop + upper.offsetHeight / 2;
}

function sameColumn(a: HTMLElement, b: HTMLElement): boolean {
  return Math.abs(a.offsetLeft - b.offsetLeft) < a.offsetWidth / 2;
}
