// How a player joins a class: what the class is, what the teacher will see, and a name.
import { useSignal } from '@preact/signals';
import type { ClassInfo } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { WaysFolded } from '../../room/ways-panel.tsx';
import { Bar } from '../../ui/bar.tsx';
import { NameField } from '../../ui/name-field.tsx';
import { joinClass } from '../model/requests.ts';
import { FRIENDS, JOIN, termsSentences } from './strings.ts';

interface JoinScreenProps {
  readonly app: App;
  readonly info: ClassInfo;
  readonly onJoined: () => void;
}

export function JoinScreen({ app, info, onJoined }: JoinScreenProps) {
  const { name } = app.settings.value;
  const { amongFriends } = info.terms;
  const missing = useSignal(false);
  const problem = useSignal<string | null>(null);
  const busy = useSignal(false);

  async function join(event: Event) {
    event.preventDefault();
    missing.value = name.trim() === '';
    if (missing.value || busy.value) return;
    busy.value = true;
    const answer = await joinClass(info.code, name);
    busy.value = false;
    if (answer.ok) onJoined();
    else problem.value = answer.message;
  }

  return (
    <>
      <Bar app={app} home />
      <main class="class-page join">
        <h1>{amongFriends ? FRIENDS.title : JOIN.title(info.title)}</h1>
        {info.ended || !info.joiningOpen ? (
          <p>{info.ended ? JOIN.over : JOIN.closed}</p>
        ) : (
          <form class="join-form" onSubmit={(event) => void join(event)} noValidate>
            <p>{amongFriends ? FRIENDS.about : JOIN.about[info.form]}</p>
            <ul class="told">
              {termsSentences(info.terms).map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
              {info.takeHome && <li>{JOIN.takeHome}</li>}
              <li>{JOIN.kept(info.keptDays)}</li>
            </ul>
            <WaysFolded mode="class" terms={info.tableTerms} />
            <NameField
              value={name}
              missing={missing.value && name.trim() === ''}
              onChange={(next) => app.change({ name: next })}
            />
            <p class="notice" role="alert">
              {problem.value}
            </p>
            <button type="submit" class="primary" aria-disabled={busy.value}>
              {amongFriends ? FRIENDS.button : JOIN.button}
            </button>
          </form>
        )}
      </main>
    </>
  );
}
