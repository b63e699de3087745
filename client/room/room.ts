// One room on the page: what the server says, how the player laid out the rack, and everything a player can do.
import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type Choice,
  type CompiledCard,
  choiceObjection,
  type Face,
  type MoveStep,
  type Review,
  type SeatView,
  type ServerMessage,
  type Step,
  type Table,
  type TableAction,
} from '../../shared-engine/index.ts';
import { type Helped, withHelp } from '../coach/helped.ts';
import type { ConnectionState, RoomConnection } from '../connection/connection.ts';
import type { ClientRequest } from '../connection/pending.ts';
import { type Aims, toggleAim } from './aims.ts';
import { type KeptCommitment, keptWith } from './kept-commitment.ts';
import { type Marks, marksUntil } from './marks.ts';
import { openPass, tileObjection } from './open-pass.ts';
import * as rack from './rack-layout.ts';
import { ROOM } from './strings.ts';

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

/** Whether this table plays without the card now: by its ways, or because its teacher has closed it. */
export function isCardClosed({ table, view }: Seated): boolean {
  return table.controls?.cardClosed === true || view.terms.cardHelp === 'none';
}

/** Whoever plays alone may; in a class the teacher says, and players are told before the first deal. */
export function mayAskCoach({ mode, controls }: Table): boolean {
  return mode === 'alone' || controls?.coach === true;
}

export interface RoomState {
  readonly code: string;
  /** Where the table is: on the server, in this page alone, or in what this browser stores of the past. */
  readonly home: 'server' | 'page' | 'past';
  readonly connection: ConnectionState;
  readonly table: Table | null;
  /** The private review of the round that closed last. */
  readonly review: Review | null;
  /** Whether deep analyses of its choices may still arrive. */
  readonly analysisRunning: boolean;
  readonly layout: rack.RackLayout;
  /** Why the last thing the player tried did not happen. */
  readonly notice: string | null;
  /** What happened last, for the live region. */
  readonly announcements: readonly string[];
  /** On the page's own clock, in milliseconds; null without a deadline. */
  readonly deadlineAt: number | null;
  /** Requests without an answer yet. */
  readonly pendingCount: number;
  /** Whether the card lies beside the rack. */
  readonly cardOpen: boolean;
  readonly aims: Aims;
  readonly helped: Helped;
  /** Of the deal on the table, as this page first saw it. */
  readonly commitment: KeptCommitment | null;
}

export interface RoomPorts {
  readonly home: RoomState['home'];
  readonly newId: () => string;
  readonly now: () => number;
  /** Called after each change of the layout, to keep it over a reload. */
  readonly saveLayout: (layout: rack.RackLayout) => void;
  /** Whether the player last left the card open. */
  readonly cardOpen: boolean;
  readonly saveCardOpen: (open: boolean) => void;
  readonly initialAims: Aims;
  readonly saveAims: (aims: Aims) => void;
  readonly initialHelped: Helped;
  readonly saveHelped: (helped: Helped) => void;
  readonly initialCommitment: KeptCommitment | null;
  readonly saveCommitment: (kept: KeptCommitment | null) => void;
  readonly loadCard: () => Promise<CompiledCard | null>;
  readonly announcementsOf: (before: Table | null, next: Table) => readonly string[];
  readonly connect: (on: {
    readonly state: (state: ConnectionState) => void;
    readonly message: (message: ServerMessage) => void;
  }) => RoomConnection;
}

export interface Room {
  readonly state: ReadonlySignal<RoomState>;
  /** Puts a tile into the tray, or takes it out when it lies there. */
  toggleTile(id: number): void;
  /** Takes the tile at this place of the tray, counted from 0, back to the rack. */
  emptySlot(slot: number): void;
  clearTray(): void;
  moveTile(id: number, before: number | null): void;
  sortBy(sort: rack.Sort): void;
  setBlind(count: number): void;
  pass(): void;
  choose(choice: Choice): void;
  act(action: TableAction): void;
  showCard(open: boolean): void;
  toggleAim(round: number, step: MoveStep, section: string): void;
  /** The coach was asked before this choice, and named this pass. */
  noteHelp(round: number, step: Step, named?: readonly Face[]): void;
  /** The card of this table; null when it cannot be had just now. */
  readonly loadCard: () => Promise<CompiledCard | null>;
  /** Connects anew, after a seat was taken or the player asked for it. */
  reconnect(): void;
  retryNow(): void;
  /** Whether the round may go on in the page while the server is out of reach. */
  canPlayOn(): boolean;
  playOn(): void;
  /** Leaves the round that went on in the page. */
  backToServer(): void;
  close(): void;
}

export function createRoom(code: string, firstLayout: rack.RackLayout, ports: RoomPorts): Room {
  const state = signal<RoomState>({
    code,
    home: ports.home,
    connection: { kind: 'connecting' },
    table: null,
    review: null,
    analysisRunning: true,
    layout: firstLayout,
    notice: null,
    announcements: [],
    deadlineAt: null,
    pendingCount: 0,
    cardOpen: ports.cardOpen,
    aims: ports.initialAims,
    helped: ports.initialHelped,
    commitment: ports.initialCommitment,
  });
  const change = (part: Partial<RoomState>) => {
    state.value = { ...state.value, ...part };
  };
  const changeLayout = (layout: rack.RackLayout, notice: string | null = null) => {
    change({ layout, notice });
    ports.saveLayout(layout);
  };

  const mark = ({ aims, helped }: Marks) => {
    const before = state.value;
    change({ aims, helped });
    if (aims !== before.aims) ports.saveAims(aims);
    if (helped !== before.helped) ports.saveHelped(helped);
  };

  const connection = ports.connect({
    state: (next) => {
      const { connection: before } = state.value;
      change(connected(state.value, next, { home: ports.home, pendingCount: connection.pendingCount() }));
      if (before.kind === 'here' && next.kind !== 'here') mark(marksUntil(state.value, before.left));
    },
    message: (message) => {
      const { commitment } = state.value;
      change({ ...received(state.value, message, ports), pendingCount: connection.pendingCount() });
      if (message.kind === 'table') ports.saveLayout(state.value.layout);
      if (state.value.commitment !== commitment) ports.saveCommitment(state.value.commitment);
    },
  });

  const send = (request: ClientRequest) => {
    connection.send(request);
    change({ pendingCount: connection.pendingCount(), notice: null });
  };

  function choose(choice: Choice) {
    const seated = seatedAt(state.value.table);
    if (!seated) return;
    const objection = choiceObjection(seated.view, choice);
    if (objection) return change({ notice: objection.message });
    send({ kind: 'choose', id: ports.newId(), round: seated.table.round, seat: seated.you, choice });
  }

  /** Runs `use` only while the tray is open. */
  function withTray(use: (open: { step: MoveStep; needed: number }, seated: Seated) => void) {
    const seated = seatedAt(state.value.table);
    const pass = seated && openPass(seated.view, seated.you);
    if (seated && pass && !pass.submitted) use(pass, seated);
  }

  return {
    state,
    toggleTile: (id) =>
      withTray(({ needed }, { view }) => {
        const { layout } = state.value;
        if (layout.tray.includes(id)) return changeLayout(rack.removeFromTray(layout, id));
        const face = layout.tiles.find((tile) => tile.id === id)?.face;
        if (!face) return;
        const objection = objectionToTile(view, face, layout, needed);
        changeLayout(objection ? layout : rack.addToTray(layout, id, needed), objection);
      }),
    emptySlot: (slot) =>
      withTray(() => {
        const id = state.value.layout.tray[slot];
        if (id !== undefined) changeLayout(rack.removeFromTray(state.value.layout, id));
      }),
    clearTray: () => withTray(() => changeLayout({ ...state.value.layout, tray: [], blind: 0 })),
    moveTile: (id, before) => changeLayout(rack.moveBefore(state.value.layout, id, before)),
    sortBy: (sort) => changeLayout(rack.sortBy(state.value.layout, sort)),
    setBlind: (count) =>
      withTray(({ needed }) => changeLayout(rack.setBlind(state.value.layout, count, needed))),
    pass: () =>
      withTray(({ step }) => {
        const { layout } = state.value;
        choose({ kind: 'pass', step, tiles: rack.facesInTray(layout), blind: layout.blind });
      }),
    choose,
    act: (action) => send({ kind: 'action', id: ports.newId(), action }),
    showCard(open) {
      change({ cardOpen: open });
      ports.saveCardOpen(open);
    },
    toggleAim: (round, step, section) =>
      mark({ ...state.value, aims: toggleAim(state.value.aims, round, step, section) }),
    noteHelp: (...help) => mark({ ...state.value, helped: withHelp(state.value.helped, ...help) }),
    loadCard: ports.loadCard,
    reconnect: () => connection.start(),
    retryNow: () => connection.retryNow(),
    canPlayOn: () => connection.canPlayOn?.() ?? false,
    playOn: () => connection.playOn?.(),
    backToServer: () => connection.backToServer?.(),
    close: () => connection.stop(),
  };
}

function objectionToTile(view: SeatView, face: Face, layout: rack.RackLayout, needed: number): string | null {
  const objection = tileObjection(view, face);
  if (objection) return objection.message;
  return layout.tray.length + layout.blind >= needed ? 'The tray is full. Take a tile back first.' : null;
}

/** What another state of the connection changes. Whoever comes back from a round in the page sees the server's anew. */
function connected(
  before: RoomState,
  connection: ConnectionState,
  { home, pendingCount }: Pick<RoomState, 'home' | 'pendingCount'>,
): Partial<RoomState> {
  const isHere = connection.kind === 'here';
  const isBack = before.connection.kind === 'here' && !isHere;
  const isAtTable = isHere || connection.kind === 'open';
  return {
    connection,
    pendingCount,
    home: isHere ? 'page' : home,
    // What did not happen without a connection is settled by one.
    notice: isAtTable ? null : before.notice,
    ...(isBack && { table: null, review: null }),
  };
}

/** What a message from the server changes in the state. */
function received(
  before: RoomState,
  message: ServerMessage,
  { now, announcementsOf }: Pick<RoomPorts, 'now' | 'announcementsOf'>,
): Partial<RoomState> {
  switch (message.kind) {
    case 'welcome':
    case 'ack':
    // The connection has handled these already.
    case 'delta':
    case 'storage':
    case 'heartbeat':
      return {};
    case 'rejected':
      return { notice: message.message };
    case 'old-secret-shown':
      return { notice: ROOM.oldSecretShown };
    case 'review':
      if (message.round !== before.table?.round) return {};
      return { review: message.review, analysisRunning: message.more ?? true };
    case 'table': {
      const { table } = message;
      const seated = seatedAt(table);
      const announcements = announcementsOf(before.table, table);
      return {
        table,
        review: table.round === before.table?.round ? before.review : null,
        layout: seated ? rack.withView(before.layout, table.round, seated.view) : before.layout,
        commitment: keptWith(before.commitment, table),
        announcements: announcements.length > 0 ? announcements : before.announcements,
        deadlineAt: table.remaining === null ? null : now() + table.remaining,
      };
    }
  }
}
