// A player's own table, with what the teacher does to it said above.
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { ClassInfo } from '../../shared-engine/index.ts';
import { RoomScreen, serverRoom } from '../app/rooms.ts';
import type { App } from '../app/routes/app.ts';
import { aimAt } from '../room/aims.ts';
import { openPass } from '../room/pending-decision.ts';
import { seatedAt } from '../room/room.ts';
import type { Screen } from '../room/screen.ts';
import { lineNews } from './guided-strings.ts';
import { classInfo, nameAims } from './requests.ts';
import { DESK, PLAYER } from './strings.ts';

interface PlayerTableProps {
  readonly app: App;
  readonly info: Pick<ClassInfo, 'code' | 'form'>;
  readonly room: string;
}

export function PlayerTable({ app, info: { code, form }, room }: PlayerTableProps) {
  const table = useMemo(() => serverRoom(room), [room]);
  useEffect(() => {
    let said = table.state.peek().aims;
    return table.state.subscribe(({ aims, table: now }) => {
      if (aims === said) return;
      said = aims;
      const seated = seatedAt(now);
      const open = seated && openPass(seated.view, seated.you);
      if (!seated || !open) return;
      // An aim that does not arrive is missing from the talk and from nothing else.
      void nameAims(code, { step: open.step, families: aimAt(aims, seated.table.round, open.step) });
    });
  }, [table, code]);
  return (
    <RoomScreen
      app={app}
      open={() => table}
      guide={(screen) => (
        <>
          <DealWords code={code} screen={screen} />
          <Word screen={screen} oneLine={form === 'guided'} />
        </>
      )}
    />
  );
}

interface DealWordsProps {
  readonly code: string;
  readonly screen: Screen;
}

/** Which deal of the drill lies here, and what the teacher wrote for it. */
function DealWords({ code, screen }: DealWordsProps) {
  const [deal, setDeal] = useState<NonNullable<ClassInfo['player']>['deal']>(null);
  const at = screen.kind === 'playing' || screen.kind === 'closed' ? screen.seated.table.round : null;
  useEffect(() => {
    let on = true;
    setDeal(null);
    // Without an answer the words are missing, and nothing else.
    if (at !== null) {
      void classInfo(code).then((answer) => {
        if (on && answer.ok) setDeal(answer.value.player?.deal ?? null);
      });
    }
    return () => {
      on = false;
    };
  }, [code, at]);
  if (deal === null) return null;
  return (
    <section class="deal-words" aria-label={PLAYER.deal}>
      <p class="aside">
        {DESK.dealNumber(deal.number, deal.of)}
        {deal.title && `: ${deal.title}`}
      </p>
      {deal.task && <p class="task">{deal.task}</p>}
    </section>
  );
}

interface WordProps {
  readonly screen: Screen;
  readonly oneLine: boolean;
}

function Word({ screen, oneLine }: WordProps) {
  return (
    <p class="led" role="status">
      {wordsFor(screen, oneLine)}
    </p>
  );
}

function wordsFor(screen: Screen, oneLine: boolean): string | null {
  if (screen.kind !== 'playing' && screen.kind !== 'closed') return null;
  const { led } = screen.seated.table;
  const line = oneLine ? lineNews(screen.seated.view, led?.held === true) : null;
  if (screen.kind === 'closed') return line;
  if (led?.standIn) return PLAYER.standIn;
  // At such a table every step ends in a hold; what it waits for says more.
  return led?.held ? (line ?? PLAYER.held) : line;
}
