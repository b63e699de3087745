// What friends chose who play the same deal: a line for each step that one has come past oneself.
import { classPath, type FriendChoice, friendChoicesSchema } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { Invite } from '../../room/invite.tsx';
import { sentenceList } from '../../tiles/tile-names.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { stepTitle } from '../model/strings.ts';
import { useUpdates } from '../model/use-updates.ts';
import { FRIENDS } from './strings.ts';

interface FriendChoicesProps {
  readonly app: App;
  readonly code: string;
}

export function FriendChoices({ app, code }: FriendChoicesProps) {
  const { value, problem } = useUpdates(classPath(code, 'choices'), friendChoicesSchema, FRIENDS.lost);
  const { friends = [], steps = [] } = value ?? {};
  // The step one comes from stands first, because that is what one wants to compare.
  const latest = steps.toReversed();
  return (
    <details class="friend-choices">
      <summary>
        {FRIENDS.compare} {friends.length > 0 && <span class="aside">{sentenceList(friends)}</span>}
      </summary>
      {problem && <p role="alert">{problem}</p>}
      {friends.length > 0 && steps.length === 0 && <p>{FRIENDS.notYet(sentenceList(friends))}</p>}
      {friends.length === 0 && (value !== null || problem === null) && (
        <>
          <p>{FRIENDS.alone}</p>
          <Invite link={app.linkTo({ kind: 'class', code, part: 'main' })} code={code} />
        </>
      )}
      {friends.length > 0 &&
        latest.map(({ step, own, others }) => (
          <section key={step} aria-label={stepTitle(step)}>
            <h3>{stepTitle(step)}</h3>
            <dl>
              <Chosen name={FRIENDS.you} choice={own} />
              {others.map(({ name, choice, sameTiles }) => (
                <Chosen key={name} name={name} choice={choice} note={sameTiles ? null : FRIENDS.otherTiles} />
              ))}
            </dl>
            {others.length === 0 && <p class="aside">{FRIENDS.waiting}</p>}
          </section>
        ))}
    </details>
  );
}

interface ChosenProps {
  readonly name: string;
  readonly choice: FriendChoice;
  readonly note?: string | null;
}

function Chosen({ name, choice, note = null }: ChosenProps) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <ChoiceWords choice={choice} /> {note && <span class="aside">{note}</span>}
      </dd>
    </div>
  );
}

function ChoiceWords({ choice }: { readonly choice: FriendChoice }) {
  switch (choice.kind) {
    case 'pass':
      return (
        <>
          <TileRow tiles={choice.tiles} /> {choice.blind > 0 && FRIENDS.blind(choice.blind)}
        </>
      );
    case 'vote':
      return <>{FRIENDS.go[`${choice.go}`]}</>;
    case 'ask':
      return <>{FRIENDS.asked(choice.count)}</>;
  }
}
