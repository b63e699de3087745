// A player's own table in a class, with what the teacher does shown above it.
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { ClassInfo } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { aimsAt } from '../../room/aims.ts';
import { openPass } from '../../room/open-pass.ts';
import { type Room, seatedAt } from '../../room/room.ts';
import type { Screen, ServerTables } from '../../room/screen.ts';
import { TileText } from '../../tiles/tile-text.tsx';
import { fetchClassInfo, joinClass, sendAims } from '../model/requests.ts';
import { CLASS } from '../model/strings.ts';
import { FriendChoices } from './friend-choices.tsx';
import { guidedMessage } from './guided-message.ts';
import { PLAYER } from './strings.ts';
import { TakeHome } from './take-home.tsx';

interface PlayerTableProps {
  readonly app: App;
  readonly info: Pick<ClassInfo, 'code' | 'form' | 'terms'>;
  readonly room: string;
  readonly tables: ServerTables;
  /** Whether the teacher has just put the player here. */
  readonly isMoved: boolean;
  /** Called when the player has another place than this one, or none because the class is deleted. */
  readonly onMoved: () => void;
}

export function PlayerTable({ app, info, room, tables, isMoved, onMoved }: PlayerTableProps) {
  const { code, form, terms } = info;
  const { amongFriends } = terms;
  const { RoomScreen, serverRoom } = tables;
  const table = useMemo(() => serverRoom(room), [serverRoom, room]);
  useEffect(() => {
    // Only a teacher's big screen shows aims.
    if (amongFriends) return;
    let lastSent = table.state.peek().aims;
    return table.state.subscribe(({ aims, table: now }) => {
      if (aims === lastSent) return;
      lastSent = aims;
      const seated = seatedAt(now);
      const open = seated && openPass(seated.view, seated.you);
      if (!seated || !open) return;
      // A lost aim is missing from the big screen and from nothing else, so a failure is not shown.
      void sendAims(code, { step: open.step, sections: aimsAt(aims, seated.table.round, open.step) });
    });
  }, [table, code, amongFriends]);
  const renamed = useNewName(table);
  const isRemoved = useReseated(table, code, app.settings.peek().name, onMoved);
  const given = renamed === null ? (isMoved ? PLAYER.moved : null) : PLAYER.renamed(renamed);
  return (
    <RoomScreen
      app={app}
      open={() => table}
      guide={(screen) =>
        amongFriends ? (
          <FriendChoices app={app} code={code} />
        ) : (
          <>
            <DealTexts code={code} screen={screen} />
            <TakeHome app={app} code={code} room={room} screen={screen} />
            <p class="teacher-message" role="status">
              {isRemoved ? PLAYER.removed : (messageAbove(screen, form === 'guided') ?? given)}
            </p>
          </>
        )
      }
    />
  );
}

/** The name that the teacher has given this player while the page was open; null before that. */
function useNewName(table: Room): string | null {
  const [renamed, setRenamed] = useState<string | null>(null);
  useEffect(() => {
    let known: string | null = null;
    return table.state.subscribe(({ table: now }) => {
      const own = now === null || now.you === null ? null : now.seats[now.you];
      if (own?.kind !== 'person') return;
      if (known !== null && known !== own.name) setRenamed(own.name);
      known = own.name;
    });
  }, [table]);
  return renamed;
}

/**
 * Whoever has lost the seat here asks the class, which says where the player sits now and opens that seat. True where the
 * player is in the class no more.
 */
function useReseated(table: Room, code: string, name: string, onMoved: () => void): boolean {
  const [isRemoved, setRemoved] = useState(false);
  useEffect(() => {
    let isAsked = false;
    return table.state.subscribe(({ connection }) => {
      if (connection.kind !== 'ended' || connection.reason !== 'no-room' || isAsked) return;
      isAsked = true;
      void fetchClassInfo(code).then(async (answer) => {
        // The page of the class says that it is deleted.
        if (!answer.ok) return answer.code === 'no-such-class' ? onMoved() : undefined;
        if (answer.value.player === null) return setRemoved(true);
        const again = await joinClass(code, name);
        if (again.ok) onMoved();
      });
    });
  }, [table, code, name, onMoved]);
  return isRemoved;
}

interface DealTextsProps {
  readonly code: string;
  readonly screen: Screen;
}

/** Which deal of the drill is played, and what the teacher wrote for it. */
function DealTexts({ code, screen }: DealTextsProps) {
  const [deal, setDeal] = useState<NonNullable<ClassInfo['player']>['deal']>(null);
  const round = screen.kind === 'playing' || screen.kind === 'closed' ? screen.seated.table.round : null;
  useEffect(() => {
    let mounted = true;
    setDeal(null);
    // Without an answer the texts are missing, and nothing else.
    if (round !== null) {
      void fetchClassInfo(code).then((answer) => {
        if (mounted && answer.ok) setDeal(answer.value.player?.deal ?? null);
      });
    }
    return () => {
      mounted = false;
    };
  }, [code, round]);
  if (deal === null) return null;
  return (
    <section class="deal-texts" aria-label={PLAYER.deal}>
      <p class="aside">
        {CLASS.dealNumber(deal.number, deal.of)}
        {deal.title && `: ${deal.title}`}
      </p>
      {deal.task && (
        <p class="task">
          <TileText text={deal.task} />
        </p>
      )}
      {deal.scripted && <p class="aside">{PLAYER.scripted}</p>}
    </section>
  );
}

function messageAbove(screen: Screen, guided: boolean): string | null {
  if (screen.kind !== 'playing' && screen.kind !== 'closed') return null;
  const { controls } = screen.seated.table;
  const held = controls?.held === true;
  const message = guided ? guidedMessage(screen.seated.view, held) : null;
  if (controls?.classOver) return PLAYER.over;
  if (screen.kind === 'closed') return message;
  if (controls?.standIn) return PLAYER.standIn;
  // In a guided deal every step ends in a hold, and the guided message says what it waits for.
  return held ? (message ?? PLAYER.held) : message;
}
