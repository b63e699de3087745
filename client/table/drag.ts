// Dragging a tile with mouse, pen or finger: the tile follows the pointer and is dropped on the tray or the rack.

export type Drop =
  | { readonly kind: 'tray' }
  | { readonly kind: 'tile'; readonly id: number; readonly after: boolean };

interface DragEvents {
  /** The pointer has moved far enough to be no tap. */
  readonly began: () => void;
  readonly droppedOn: (drop: Drop) => void;
}

const TAP_PX = 8;

/** Follows the pointer from a `pointerdown` until it is lifted or the browser takes it away. */
export function startDrag(event: PointerEvent, { began, droppedOn }: DragEvents): void {
  const source = event.currentTarget;
  if (event.button !== 0 || !(source instanceof HTMLElement)) return;
  const box = source.getBoundingClientRect();
  const start = { x: event.clientX, y: event.clientY };
  let ghost: HTMLElement | null = null;

  const lift = () => {
    ghost = document.createElement('div');
    ghost.className = 'drag-ghost';
    ghost.style.width = `${box.width}px`;
    ghost.append(...[...source.children].map((child) => child.cloneNode(true)));
    document.body.append(ghost);
    source.classList.add('dragging');
    began();
  };

  const move = (moved: PointerEvent) => {
    if (moved.pointerId !== event.pointerId) return;
    const dx = moved.clientX - start.x;
    const dy = moved.clientY - start.y;
    if (!ghost && Math.hypot(dx, dy) > TAP_PX) lift();
    if (ghost) ghost.style.transform = `translate(${box.left + dx}px, ${box.top + dy}px)`;
  };

  const finish = (ended: PointerEvent) => {
    if (ended.pointerId !== event.pointerId) return;
    window.removeEventListener('pointermove', move);
    window.removeEventListener('pointerup', finish);
    window.removeEventListener('pointercancel', finish);
    if (!ghost) return;
    ghost.remove();
    source.classList.remove('dragging');
    const drop = ended.type === 'pointerup' ? dropAt(ended.clientX, ended.clientY) : null;
    if (drop) droppedOn(drop);
  };

  window.addEventListener('pointermove', move);
  window.addEventListener('pointerup', finish);
  window.addEventListener('pointercancel', finish);
}

function dropAt(x: number, y: number): Drop | null {
  const under = document.elementFromPoint(x, y);
  if (under?.closest('[data-drop="tray"]')) return { kind: 'tray' };
  const tile = under?.closest<HTMLElement>('[data-tile]');
  if (!tile) return null;
  const box = tile.getBoundingClientRect();
  return { kind: 'tile', id: Number(tile.dataset.tile), after: x > box.left + box.width / 2 };
}
