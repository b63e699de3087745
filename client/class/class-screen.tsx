// The page of a class as this browser may see it: dashboard, big screen, report, a player's table, or the way to join.
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { ClassInfo } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import type { ClassPart } from '../app/routes/route.ts';
import { CodeField } from '../room/code-field.tsx';
import type { ServerTables } from '../room/screen.ts';
import { Bar } from '../ui/bar.tsx';
import { ScreenGate } from './keys/screen-gate.tsx';
import { takeKey } from './keys/teacher-key.ts';
import { DashboardScreen } from './lead/dashboard.tsx';
import { bringKey, fetchClassInfo } from './model/requests.ts';
import { CLASS } from './model/strings.ts';
import { JoinScreen } from './player/join-screen.tsx';
import { PlayerTable } from './player/player-table.tsx';
import { BigScreenPage } from './results/big-screen.tsx';
import { ReportScreen } from './results/report-screen.tsx';

interface ClassScreenProps {
  readonly app: App;
  readonly code: string;
  readonly part: ClassPart;
  /** How a player of the class comes to a table. */
  readonly tables: ServerTables;
}

/** Pause before the class is asked for again when the server could not be reached, in milliseconds. */
const RETRY_MS = 2000;

interface Failure {
  readonly message: string;
  /** Whether there is no such class. */
  readonly gone: boolean;
}

type Answer = { readonly info: ClassInfo } | Failure | null;

export function ClassScreen({ app, code, part, tables }: ClassScreenProps) {
  const [answer, setAnswer] = useState<Answer>(null);
  const [attempt, setAttempt] = useState(0);
  const [moves, setMoves] = useState(0);
  /** The class that was here before it was gone. */
  const shown = useRef<string | null>(null);
  const onMoved = useCallback(() => {
    setMoves((count) => count + 1);
    setAttempt((count) => count + 1);
  }, []);
  useEffect(() => {
    let mounted = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const key = takeKey(window.location, window.history);
    void fetchWithKey(code, key).then((got) => {
      if (!mounted) return;
      if (got.ok) {
        shown.current = code;
        return setAnswer({ info: got.value });
      }
      const gone = got.code === 'no-such-class';
      setAnswer(
        gone && shown.current === code
          ? { message: CLASS.deleted, gone: false }
          : { message: got.message, gone },
      );
      if (!gone && got.code !== 'wrong-key') timer = setTimeout(() => setAttempt(attempt + 1), RETRY_MS);
    });
    return () => {
      mounted = false;
      clearTimeout(timer);
    };
  }, [code, attempt]);

  if (answer === null || 'message' in answer) return <NoClass app={app} failure={answer} />;
  const { info } = answer;
  if (part === 'big-screen' && !info.teacher && !info.screen) {
    return <ScreenGate code={code} onOpened={() => setAttempt(attempt + 1)} />;
  }
  if (part === 'report' && !info.teacher) {
    return <NoClass app={app} failure={{ message: CLASS.notYours, gone: false }} />;
  }
  if (part === 'big-screen') return <BigScreenPage app={app} code={code} />;
  if (part === 'report') return <ReportScreen app={app} code={code} />;
  if (info.teacher) return <DashboardScreen app={app} code={code} />;
  if (info.player) {
    const { room, seat } = info.player;
    const place = { room, isMoved: moves > 0, onMoved };
    return <PlayerTable key={`${room} ${seat} ${moves}`} app={app} info={info} tables={tables} {...place} />;
  }
  return <JoinScreen app={app} info={info} onJoined={() => setAttempt(attempt + 1)} />;
}

/** With a key this browser becomes a teacher's first; a key that does not fit is said, and nothing else is opened. */
async function fetchWithKey(code: string, key: string | null) {
  const brought = key === null ? null : await bringKey(code, key);
  return brought === null || brought.ok ? fetchClassInfo(code) : brought;
}

interface NoClassProps {
  readonly app: App;
  /** Null while the answer is on its way. */
  readonly failure: Failure | null;
}

function NoClass({ app, failure }: NoClassProps) {
  return (
    <>
      <Bar app={app} home />
      <main class="quiet">
        {failure === null ? (
          <p role="status">{CLASS.opening}</p>
        ) : failure.gone ? (
          <>
            <h1>{CLASS.gone}</h1>
            <p>{CLASS.goneAbout}</p>
            <CodeField onCode={(code) => app.go({ kind: 'class', code, part: 'main' })} />
          </>
        ) : (
          <p role="alert">{failure.message}</p>
        )}
      </main>
    </>
  );
}
