// A player's own table in a class, with what the teacher does shown above it.
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { ClassInfo } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { aimsAt } from '../../room/aims.ts';
import { openPass } from '../../room/open-pass.ts';
import { seatedAt } from '../../room/room.ts';
import type { Screen, ServerTables } from '../../room/screen.ts';
import { fetchClassInfo, sendAims } from '../model/requests.ts';
import { CLASS } from '../model/strings.ts';
import { FriendChoices } from './friend-choices.tsx';
import { guidedMessage } from './guided-message.ts';
import { PLAYER } from './strings.ts';

interface PlayerTableProps {
  readonly app: App;
  readonly info: Pick<ClassInfo, 'code' | 'form' | 'terms'>;
  readonly room: string;
  readonly tables: ServerTables;
}

export function PlayerTable({ app, info: { code, form, terms }, room, tables }: PlayerTableProps) {
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
            <p class="teacher-message" role="status">
              {messageAbove(screen, form === 'guided')}
            </p>
          </>
        )
      }
    />
  );
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
      {deal.task && <p class="task">{deal.task}</p>}
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
