// How each kind of room is opened: at the server, in the page for one deal, or as the example of the help.
import {
  type CardFile,
  type CompiledCard,
  compileCard,
  DAY_SEAT,
  type Deal,
  dealOfDay,
  type Four,
  type RoundPlay,
  STANDARD_TERMS,
  type StoredRound,
  type Terms,
} from '../../shared-engine/index.ts';
import { type Helped, readHelped, withHelp, writeHelped } from '../coach/helped.ts';
import { askTicket, hasRoom } from '../connection/api.ts';
import { type Connection, connect } from '../connection/connection.ts';
import { oncePerFrame } from '../connection/once-per-frame.ts';
import { openPendingRequests, type PendingRequests } from '../connection/pending.ts';
import { newId } from '../connection/random.ts';
import { browserSocket, browserTimer, socketUrl } from '../connection/socket.ts';
import { LESSON, LESSON_DEAL } from '../lessons/lesson.ts';
import { aimsOfRound, readAims, writeAims } from '../room/aims.ts';
import { readKept, writeKept } from '../room/kept-commitment.ts';
import { readLayout, writeLayout } from '../room/rack-layout-storage.ts';
import { createRoom, type Room, type RoomPorts } from '../room/room.ts';
import { readBotNames, storeBotNames } from '../storage/bot-names.ts';
import { lastingStorage, tabStorage } from '../storage/browser-storage.ts';
import { readPageRound, storePageRound } from '../storage/page-round.ts';
import { forgetPlace, notePlace } from '../storage/recent-places.ts';
import type { Settings } from '../storage/settings.ts';
import { wasFinishedHere } from '../storage/went-on.ts';
import { announcementsOf } from '../table/announcements.ts';
import { analyzeHere } from './analyze-here.ts';
import { followDeals } from './follow-deals.ts';
import { FRONT } from './front-strings.ts';
import { cardFileOf, cardOfTable, keeping } from './kept-rooms.ts';
import { fetchPageTable } from './page-table.ts';
import { connectOrPlayOn } from './playing-on.ts';
import { PRACTICE } from './room-strings.ts';
import { dealKey, exchangeOf, ownCardOf, type SharedDeal } from './routes/deal-link.ts';
import { pathOf } from './routes/route.ts';

type RoomSpecifics = Pick<RoomPorts, 'home' | 'connect' | 'loadCard'> & Partial<RoomPorts>;

/** A room with what all rooms of this page share; `key` tells its stored texts from those of other rooms. */
export function roomWith(code: string, key: string, specifics: RoomSpecifics): Room {
  return createRoom(code, readLayout(key, tabStorage, lastingStorage), {
    newId,
    now: () => performance.now(),
    saveLayout: (layout) => writeLayout(layout, key, tabStorage, lastingStorage),
    announcementsOf,
    cardOpen: lastingStorage.read('card') === 'open',
    saveCardOpen: (open) => lastingStorage.write('card', open ? 'open' : 'closed'),
    initialHelped: readHelped(key, tabStorage),
    saveHelped: (helped) => writeHelped(helped, key, tabStorage),
    initialAims: readAims(key, tabStorage),
    saveAims: (aims) => writeAims(aims, key, tabStorage),
    initialCommitment: readKept(key, tabStorage),
    saveCommitment: (kept) => writeKept(kept, key, tabStorage),
    ...specifics,
  });
}

/** The table with this code, on the server; alone with bots its round may go on in the page. */
export function serverRoom(code: string): Room {
  let file: CardFile | null = null;
  // Once it has come it is there without a network too.
  const loadCardFile = async () => {
    file ??= await (await import('../cards/load-card.ts')).loadCardFile(code);
    return file;
  };
  const loadCard = async (id: string | undefined) => {
    const { houseCard } = await import('../cards/load-card.ts');
    if (id === houseCard().id) return houseCard();
    const loaded = await loadCardFile();
    return loaded ? compileCard(loaded) : cardOfTable(code);
  };
  const room: Room = roomWith(code, code, {
    home: 'server',
    loadCard: () => loadCard(room.state.value.table?.card.id),
    connect: (on) => {
      const pending = openPendingRequests(tabStorage, `requests.${code}`);
      return connectOrPlayOn({
        code,
        pending,
        storage: lastingStorage,
        tab: tabStorage,
        loadCard,
        fetchPageTable,
        connect: (heard) => connectTable(code, pending, heard),
        isThere: () => hasRoom(code),
        startTimer: browserTimer,
        on,
      });
    },
  });
  return keeping(room, {
    placeOf: ({ mode }, home) => (home === 'page' ? 'page' : mode),
    loadCardFile,
    goesOn: { path: () => pathOf({ kind: 'room', code }), isInPage: false },
    isStoredAlready: ({ round }) =>
      room.state.value.home === 'server' && wasFinishedHere(lastingStorage, code, round),
  });
}

function connectTable(
  code: string,
  pending: PendingRequests,
  on: Parameters<RoomPorts['connect']>[0],
): Connection {
  const place = pathOf({ kind: 'room', code });
  const reviews = analyzeHere(code, {
    onMessage: oncePerFrame(on.message),
    onAnalyzedBy: (round, by) => connection.announce({ kind: 'analyzed-by', id: newId(), round, by }),
  });
  const connection = connect({
    askTicket: (signal) => askTicket(code, signal),
    openSocket: browserSocket(socketUrl(window.location, code)),
    startTimer: browserTimer,
    newId,
    random: Math.random,
    pending,
    onState: (state) => {
      if (state.kind === 'ended' && state.reason === 'no-room') forgetPlace(lastingStorage, place);
      on.state(state);
    },
    onMessage: (message) => {
      if (message.kind === 'table') notePlace(lastingStorage, place, message.table.you);
      reviews.receive(message);
    },
  });
  const stop = () => {
    connection.stop();
    reviews.stop();
  };
  return { ...connection, stop };
}

interface InPage {
  readonly title: string;
  readonly shared: SharedDeal;
  readonly settings: Pick<Settings, 'name' | 'style'>;
  readonly terms: Terms;
  readonly botNames: Four<string>;
  readonly onDeal: (deal: Deal, terms: Terms) => void;
  /** Whether the round outlives the page. */
  readonly stored: boolean;
}

/** A table in the page itself for this deal; the address bar follows from deal to deal. */
export function pageRoom(shared: SharedDeal, settings: Settings): Room {
  const botNames = readBotNames(lastingStorage, dealKey(shared), PRACTICE.bots);
  const { onDeal, path } = followDeals({ kind: 'deal', shared }, (deal, terms) => {
    const dealt = { ...shared, deal, ways: exchangeOf(terms) };
    storeBotNames(lastingStorage, dealKey(dealt), botNames);
    return { kind: 'deal', shared: dealt };
  });
  const terms = { ...settings.ways.alone, ...shared.ways };
  const room = inPage({ title: PRACTICE.title, shared, settings, terms, botNames, onDeal, stored: true });
  return keeping(room, {
    placeOf: () => 'page',
    loadCardFile: () => cardFileOf(shared.cardOf),
    goesOn: { path, isInPage: true },
  });
}

/**
 * A table in the page for the deal of a day: usual ways and bots, so that it is the same for everybody who plays it on one
 * card; on a card of one's own the bots pass for that card.
 */
export function dayRoom(date: string, settings: Settings): Room {
  const first = dealOfDay(date);
  const terms = STANDARD_TERMS.alone;
  const cardOf = ownCardOf(settings.card);
  const shared: SharedDeal = { deal: first, seat: DAY_SEAT, cardOf, ways: exchangeOf(terms) };
  // Only the first deal is the day's; another one is a deal like any other.
  const { onDeal, path } = followDeals({ kind: 'day', date }, (deal) =>
    deal.seed === first.seed ? { kind: 'day', date } : { kind: 'deal', shared: { ...shared, deal } },
  );
  const room = inPage({
    title: date,
    shared,
    settings: { name: settings.name, style: 'typical' },
    terms,
    botNames: PRACTICE.bots,
    onDeal,
    stored: true,
  });
  return keeping(room, {
    placeOf: ({ round }) => (round === 1 ? 'day' : 'page'),
    loadCardFile: () => cardFileOf(cardOf),
    goesOn: { path, isInPage: true },
  });
}

/** A round of the past at a table that is closed; what is judged of it now is stored with it. */
export function pastRoom(round: StoredRound, play: RoundPlay, card: CompiledCard): Room {
  const { table: code, number, place, card: played, helped = [] } = round.summary;
  const { aims, coached = {} } = round.detail;
  const room = roomWith(code, `past.${round.summary.id}`, {
    home: 'past',
    loadCard: async () => card,
    initialAims: aimsOfRound(number, aims),
    initialHelped: helped.reduce<Helped>((all, step) => withHelp(all, number, step, coached[step]), []),
    // Nothing is laid out or said anew at a table of the past.
    saveLayout() {},
    saveAims() {},
    saveCommitment() {},
    connect: (on) => {
      let table: Connection | null = null;
      const open = async () => {
        const [{ pastTable }, { startDeepAnalysis }] = await Promise.all([
          import('../practice/history/past-table.ts'),
          import('../workers/deep-analysis.ts'),
        ]);
        table ??= pastTable({ round, play, card, startTimer: browserTimer, startDeepAnalysis, on });
        table.start();
      };
      return {
        start: () => void open(),
        retryNow() {},
        send() {},
        stop: () => table?.stop(),
        pendingCount: () => 0,
      };
    },
  });
  // A card that is stored with the round needs no other.
  const loadCardFile = async () => (played.hash === null ? cardFileOf(code) : null);
  return keeping(room, { placeOf: () => place, loadCardFile });
}

/** The example of the help: always the same tiles and the same three bots. */
export function lessonRoom({ name }: Settings): Room {
  return inPage({
    title: LESSON.title,
    shared: LESSON_DEAL,
    settings: { name, style: 'typical' },
    terms: STANDARD_TERMS.alone,
    botNames: PRACTICE.bots,
    onDeal() {},
    stored: false,
  });
}

/** Bots, card and review are fetched only when the table opens. */
function inPage({ title, shared, settings, terms, botNames, onDeal, stored: isStored }: InPage): Room {
  const loadCard = async (): Promise<CompiledCard> => {
    const { houseCard } = await import('../cards/load-card.ts');
    const file = await cardFileOf(shared.cardOf);
    return file ? compileCard(file) : houseCard();
  };
  return roomWith(title, dealKey(shared), {
    home: 'page',
    loadCard,
    connect: (on) => {
      let table: Connection | null = null;
      let stopped = false;
      const open = async () => {
        const newTable = await fetchPageTable();
        if (stopped) return;
        const stored = isStored ? readPageRound(lastingStorage, shared.deal, shared.seat) : null;
        table ??= newTable({
          code: title,
          first: shared.deal,
          you: shared.seat,
          terms,
          name: settings.name.trim() || FRONT.guest,
          botNames,
          // The bots of a round that goes on pass as they did.
          style: stored?.style ?? settings.style,
          stored,
          store: (round) => {
            if (isStored) storePageRound(lastingStorage, round);
          },
          loadCard,
          onDeal,
          on,
        });
        table.start();
      };
      return {
        start: () => {
          stopped = false;
          void open();
        },
        retryNow() {},
        send: (request) => table?.send(request),
        stop: () => {
          stopped = true;
          table?.stop();
        },
        pendingCount: () => 0,
      };
    },
  });
}
