// A class from where this browser stands: the teacher's desk, wall or report, a player's table, or the way in.
import { useEffect, useState } from 'preact/hooks';
import type { ClassInfo } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import type { ClassPart } from '../app/routes/route.ts';
import { CodeField } from '../room/code-field.tsx';
import { ROOM } from '../room/strings.ts';
import { Bar } from '../ui/bar.tsx';
import { WallScreen } from './big-screen.tsx';
import { TeacherDesk } from './dashboard.tsx';
import { JoinScreen } from './join-screen.tsx';
import { PlayerTable } from './player-table.tsx';
import { ReportScreen } from './report-screen.tsx';
import { classInfo } from './requests.ts';
import { DESK, JOIN } from './strings.ts';

interface ClassScreenProps {
  readonly app: App;
  readonly code: string;
  readonly part: ClassPart;
}

/** Pause before the class is asked for again when the server could not be reached, in milliseconds. */
const AGAIN_MS = 2000;

type Known = { readonly info: ClassInfo } | { readonly sentence: string; readonly gone: boolean } | null;

export function ClassScreen({ app, code, part }: ClassScreenProps) {
  const [known, setKnown] = useState<Known>(null);
  const [asked, setAsked] = useState(0);
  useEffect(() => {
    let on = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    void classInfo(code).then((answer) => {
      if (!on) return;
      if (answer.ok) return setKnown({ info: answer.value });
      const gone = answer.code === 'no-such-class';
      setKnown({ sentence: answer.sentence, gone });
      if (!gone) timer = setTimeout(() => setAsked(asked + 1), AGAIN_MS);
    });
    return () => {
      on = false;
      clearTimeout(timer);
    };
  }, [code, asked]);

  if (known === null || 'sentence' in known) return <NotYet app={app} known={known} />;
  const { info } = known;
  if (part !== 'main' && !info.teacher)
    return <NotYet app={app} known={{ sentence: DESK.notYours, gone: false }} />;
  if (part === 'wall') return <WallScreen code={code} />;
  if (part === 'report') return <ReportScreen app={app} code={code} />;
  if (info.teacher) return <TeacherDesk app={app} code={code} />;
  if (info.player) return <PlayerTable app={app} info={info} room={info.player.room} />;
  return <JoinScreen app={app} info={info} onJoined={() => setAsked(asked + 1)} />;
}

function NotYet({ app, known }: { readonly app: App; readonly known: Exclude<Known, { info: ClassInfo }> }) {
  return (
    <>
      <Bar app={app} home />
      <main class="quiet">
        {known === null ? (
          <p role="status">{ROOM.opening}</p>
        ) : known.gone ? (
          <>
            <h1>{JOIN.gone}</h1>
            <p>{JOIN.goneAbout}</p>
            <CodeField onCode={(code) => app.go({ kind: 'class', code, part: 'main' })} />
          </>
        ) : (
          <p role="alert">{known.sentence}</p>
        )}
      </main>
    </>
  );
}
