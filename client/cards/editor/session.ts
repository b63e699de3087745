// A card while it is edited: its steps back and forth, storing it by itself, and other tabs that change it too.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { CardFile } from '../../../shared-engine/index.ts';
import type { CardStoring } from '../../storage/own-cards.ts';
import type { CardShelf } from '../own/shelf.ts';
import { withoutEmpty } from './edit.ts';

export type Storing = 'changed' | CardStoring;

export interface EditPorts {
  readonly shelf: Pick<CardShelf, 'open' | 'store'>;
  /** Runs `run` after so many milliseconds, unless the function returned is called. */
  readonly startTimer: (ms: number, run: () => void) => () => void;
}

export interface EditSession {
  readonly card: ReadonlySignal<CardFile>;
  readonly storing: ReadonlySignal<Storing>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** Id of the hand that is open. */
  readonly open: ReadonlySignal<string | null>;
  /** Opens another hand, or none; a hand that is left empty is dropped. */
  show(id: string | null): void;
  /** Edits that follow each other under one name are one step back. */
  change(card: CardFile, name?: string): void;
  undo(): void;
  redo(): void;
  /** Stores what is not stored yet, at once. */
  flush(): void;
  /** Another tab has stored or deleted this card. */
  changedElsewhere(): void;
  /** Goes on with what the other tab has stored; the own version is one step back. */
  takeOther(): void;
}

const STORE_AFTER_MS = 400;
const MAX_STEPS = 300;

/** Null where no card is stored under the key. */
export function openSession(key: string, { shelf, startTimer }: EditPorts): EditSession | null {
  const opened = shelf.open(key);
  if (opened === null) return null;
  let { revision } = opened;
  const card = signal(opened.card);
  const open = signal<string | null>(null);
  const storing = signal<Storing>('stored');
  const [past, future] = [signal<readonly CardFile[]>([]), signal<readonly CardFile[]>([])];
  const [canUndo, canRedo] = [signal(false), signal(false)];
  let lastName: string | undefined;
  let cancel = () => {};

  function put(next: CardFile, back: readonly CardFile[], forth: readonly CardFile[]) {
    past.value = back.slice(-MAX_STEPS);
    future.value = forth;
    canUndo.value = back.length > 0;
    canRedo.value = forth.length > 0;
    card.value = next;
    if (isHeld()) return;
    storing.value = 'changed';
    cancel();
    cancel = startTimer(STORE_AFTER_MS, flush);
  }

  /** Whether nothing is stored until somebody says which card is to stay. */
  function isHeld(): boolean {
    return storing.value === 'changed-elsewhere' || storing.value === 'removed-elsewhere';
  }

  function hold(why: 'changed-elsewhere' | 'removed-elsewhere') {
    cancel();
    storing.value = why;
  }

  function flush() {
    cancel();
    if (storing.value !== 'changed' && storing.value !== 'refused') return;
    const stored = shelf.store(key, card.value, revision);
    if (typeof stored === 'string') {
      storing.value = stored;
      return;
    }
    revision = stored.revision;
    storing.value = 'stored';
  }

  return {
    card,
    open,
    storing,
    canUndo,
    canRedo,
    flush,
    show(id) {
      open.value = id;
      const left = withoutEmpty(card.value, id);
      if (left !== card.value) put(left, past.value, future.value);
    },
    change(next, name) {
      const goesOn = name !== undefined && name === lastName && past.value.length > 0;
      lastName = name;
      put(next, goesOn ? past.value : [...past.value, card.value], []);
    },
    undo() {
      const before = past.value.at(-1);
      lastName = undefined;
      if (before) put(before, past.value.slice(0, -1), [card.value, ...future.value]);
    },
    redo() {
      const [after, ...rest] = future.value;
      lastName = undefined;
      if (after) put(after, [...past.value, card.value], rest);
    },
    changedElsewhere() {
      const other = shelf.open(key);
      if (other === null) return hold('removed-elsewhere');
      if (other.revision !== revision) return hold('changed-elsewhere');
      // Deleted there and put back as it was: what has been changed here since goes on top of it.
      if (!isHeld()) return;
      storing.value = 'changed';
      flush();
    },
    takeOther() {
      const other = shelf.open(key);
      if (other === null) return hold('removed-elsewhere');
      revision = other.revision;
      lastName = undefined;
      storing.value = 'stored';
      put(other.card, [...past.value, card.value], []);
      cancel();
      storing.value = 'stored';
    },
  };
}
