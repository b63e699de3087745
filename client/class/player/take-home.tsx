// What a player of a class reads after a round whose deal this device keeps, and the way to play it again.
import { useEffect, useState } from 'preact/hooks';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { bringHome } from '../../room/bring-home.ts';
import type { Screen } from '../../room/screen.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { noteHome } from '../../storage/taken-home.ts';
import { HOME } from './strings.ts';

/** Pause before a class that lets its deals go home is asked again for one that others still play, in milliseconds. */
const AGAIN_MS = 15_000;

interface TakeHomeProps {
  readonly app: App;
  /** Code of the class. */
  readonly code: string;
  readonly room: string;
  readonly screen: Screen;
}

export function TakeHome({ app, code, room, screen }: TakeHomeProps) {
  const table = screen.kind === 'closed' ? screen.seated.table : null;
  const round = table?.round ?? null;
  const isOver = table?.controls?.classOver === true;
  const isKept = useKept(code, { room, round }, isOver);
  if (!isKept || round === null) return null;
  if (!isOver) return <p class="aside">{HOME.kept}</p>;
  return (
    <p>
      <PageLink app={app} route={{ kind: 'home-deal', room, round }}>
        {HOME.again}
      </PageLink>
    </p>
  );
}

interface ClosedRound {
  readonly room: string;
  /** Null while none is closed. */
  readonly round: number | null;
}

/** `isOver`: whether the class has ended, after which the deal is there to be taken at once. */
function useKept(code: string, { room, round }: ClosedRound, isOver: boolean): boolean {
  const [kept, setKept] = useState<number | null>(null);
  useEffect(() => noteHome(lastingStorage, room, code), [room, code]);
  useEffect(() => {
    if (round === null) return;
    let mounted = true;
    let asking = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    async function look(nth: number) {
      clearTimeout(timer);
      // A page in a pocket keeps no class in the server's memory.
      if (asking || document.visibilityState !== 'visible') return;
      asking = true;
      const brought = await bringHome(room, nth);
      asking = false;
      if (!mounted) return;
      if (brought === 'here') setKept(nth);
      else if (brought === 'later') timer = setTimeout(() => void look(nth), AGAIN_MS);
    }
    const lookNow = () => void look(round);
    lookNow();
    document.addEventListener('visibilitychange', lookNow);
    return () => {
      mounted = false;
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', lookNow);
    };
  }, [room, round, isOver]);
  return round !== null && kept === round;
}
