// One room on the page: what the server says and the player's own arrangement, changed through one door.
import { type ReadonlySignal, signal } from '@preact/signals';
import type {
  Choice,
  CompiledCard,
  Face,
  MoveStep,
  Review,
  SeatView,
  ServerMessage,
  Table,
  TableAct,
} from '../../shared-engine/index.ts';
import type { Connection, LinkState } from '../connection/connection.ts';
import type { Order } from '../connection/pending.ts';
import { type Aims, sayAim } from './aims.ts';
import { objectionTo, openPass, tileObjection } from './pending-decision.ts';
import * as hands from './rack-layout.ts';

export interface Seated {
  readonly table: Table;
  readonly view: SeatView;
  readonly you: NonNullable<Table['you']>;
}

/** Null unless this page holds a seat in a round. */
export function seatedAt(table: Table | null): Seated | null {
  if (!table || table.you === null || table.view?.audience !== 'seat') return null;
  return { table, view: table.view, you: table.you };
}

export interface RoomState {
  readonly code: string;
  /** Where the table is: on the server, or in this page alone. */
  readonly home: 'server' | 'page';
  readonly link: LinkState;
  readonly table: Table | null;
  /** The private review of the round that closed last. */
  readonly review: Review | null;
  /** Whether choices of it may still be judged more deeply. */
  readonly moreToCome: boolean;
  readonly hand: hands.Hand;
  /** Why the last thing the player tried did not happen. */
  readonly notice: string | null;
  /** What happened last, for the live region. */
  readonly news: readonly string[];
  /** On the page's own clock, in milliseconds; null without a deadline. */
  readonly dueAt: number | null;
  /** Orders without an answer yet. */
  readonly kept: number;
  /** Whether the card lies beside the rack. */
  readonly cardOpen: boolean;
  readonly aims: Aims;
}

export interface RoomPorts {
  readonly home: RoomState['home'];
  readonly newId: () => string;
  readonly now: () => number;
  /** Called after each change of the hand, to keep it over a reload. */
  readonly keepHand: (hand: hands.Hand) => void;
  /** Whether the player last left the card open. */
  readonly cardOpen: boolean;
  readonly keepCardOpen: (open: boolean) => void;
  readonly firstAims: Aims;
  readonly keepAims: (aims: Aims) => void;
  readonly loadCard: () => Promise<CompiledCard | null>;
  readonly newsOf: (before: Table | null, next: Table) => readonly string[];
  readonly connect: (on: {
    readonly state: (state: LinkState) => void;
    readonly message: (message: ServerMessage) => void;
  }) => Connection & { readonly kept: () => number };
}

export interface Room {
  readonly state: ReadonlySignal<RoomState>;
  /** Puts a tile into the tray, or takes it out when it lies there. */
  touch(id: number): void;
  takeBackSlot(slot: number): void;
  clearTray(): void;
  moveTile(id: number, before: number | null): void;
  sortBy(sort: hands.Sort): void;
  setBlind(count: number): void;
  pass(): void;
  choose(choice: Choice): void;
  act(act: TableAct): void;
  showCard(open: boolean): void;
  sayAim(round: number, step: MoveStep, family: string): void;
  /** The card of this table; null when it cannot be had just now. */
  readonly loadCard: () => Promise<CompiledCard | null>;
  /** Connects anew, after a seat was taken or the player asked for it. */
  reconnect(): void;
  hurry(): void;
  leavePage(): void;
}

export function openRoomModel(code: string, firstHand: hands.Hand, ports: RoomPorts): Room {
  const state = signal<RoomState>({
    code,
    home: ports.home,
    link: { kind: 'connecting' },
    table: null,
    review: null,
    moreToCome: true,
    hand: firstHand,
    notice: null,
    news: [],
    dueAt: null,
    kept: 0,
    cardOpen: ports.cardOpen,
    aims: ports.firstAims,
  });
  const change = (part: Partial<RoomState>) => {
    state.value = { ...state.value, ...part };
  };
  const changeHand = (hand: hands.Hand, notice: string | null = null) => {
    change({ hand, notice });
    ports.keepHand(hand);
  };

  const connection = ports.connect({
    state: (link) => change({ link, kept: connection.kept() }),
    message: (message) => {
      change({ ...received(state.value, message, ports), kept: connection.kept() });
      if (message.kind === 'table') ports.keepHand(state.value.hand);
    },
  });

  const order = (made: Order) => {
    connection.order(made);
    change({ kept: connection.kept(), notice: null });
  };

  function choose(choice: Choice) {
    const seated = seatedAt(state.value.table);
    if (!seated) return;
    const against = objectionTo(seated.view, seated.you, choice);
    if (against) return change({ notice: against.sentence });
    order({ kind: 'choose', id: ports.newId(), round: seated.table.round, seat: seated.you, choice });
  }

  /** Runs `use` only while the tray is open. */
  function withTray(use: (open: { step: MoveStep; needed: number }, seated: Seated) => void) {
    const seated = seatedAt(state.value.table);
    const pass = seated && openPass(seated.view, seated.you);
    if (seated && pass && !pass.sealed) use(pass, seated);
  }

  return {
    state,
    touch: (id) =>
      withTray(({ step, needed }, { view }) => {
        const { hand } = state.value;
        if (hand.tray.includes(id)) return changeHand(hands.takeOut(hand, id));
        const face = hand.held.find((tile) => tile.id === id)?.face;
        if (!face) return;
        const against = whyNot(view, step, face, hand, needed);
        changeHand(against ? hand : hands.putIn(hand, id, needed), against);
      }),
    takeBackSlot: (slot) =>
      withTray(() => {
        const id = state.value.hand.tray[slot];
        if (id !== undefined) changeHand(hands.takeOut(state.value.hand, id));
      }),
    clearTray: () => withTray(() => changeHand({ ...state.value.hand, tray: [], blind: 0 })),
    moveTile: (id, before) => changeHand(hands.moveBefore(state.value.hand, id, before)),
    sortBy: (sort) => changeHand(hands.sortBy(state.value.hand, sort)),
    setBlind: (count) =>
      withTray(({ needed }) => changeHand(hands.setBlind(state.value.hand, count, needed))),
    pass: () =>
      withTray(({ step }) => {
        const { hand } = state.value;
        choose({ kind: 'seal', step, tiles: hands.facesInTray(hand), blind: hand.blind });
      }),
    choose,
    act: (act) => order({ kind: 'act', id: ports.newId(), act }),
    showCard(open) {
      change({ cardOpen: open });
      ports.keepCardOpen(open);
    },
    sayAim(round, step, family) {
      const aims = sayAim(state.value.aims, round, step, family);
      change({ aims });
      ports.keepAims(aims);
    },
    loadCard: ports.loadCard,
    reconnect: () => connection.start(),
    hurry: () => connection.hurry(),
    leavePage: () => connection.stop(),
  };
}

function whyNot(view: SeatView, step: MoveStep, face: Face, hand: hands.Hand, needed: number): string | null {
  const against = tileObjection(view, step, face);
  if (against) return against.sentence;
  return hand.tray.length + hand.blind >= needed ? 'The tray is full; take a tile back first.' : null;
}

/** The state after a message; the only place where the server's word changes the page. */
function received(
  before: RoomState,
  message: ServerMessage,
  { now, newsOf }: Pick<RoomPorts, 'now' | 'newsOf'>,
): Partial<RoomState> {
  switch (message.kind) {
    case 'welcome':
    case 'ack':
    // The connection has taken these in already.
    case 'news':
    case 'keeping':
    case 'alive':
      return {};
    case 'refused':
      return { notice: message.sentence };
    case 'review':
      if (message.round !== before.table?.round) return {};
      return { review: message.review, moreToCome: message.more ?? true };
    case 'table': {
      const { table } = message;
      const seated = seatedAt(table);
      const news = newsOf(before.table, table);
      return {
        table,
        review: table.round === before.table?.round ? before.review : null,
        hand: seated ? hands.follow(before.hand, table.round, seated.view) : before.hand,
        news: news.length > 0 ? news : before.news,
        dueAt: table.remaining === null ? null : now() + table.remaining,
      };
    }
  }
}
