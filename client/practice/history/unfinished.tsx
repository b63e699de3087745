// The rounds that were begun here and are not over, above those of the past: a way back to the table of each.
import { useSignal } from '@preact/signals';
import type { App } from '../../app/routes/app.ts';
import { routeOf } from '../../app/routes/route.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { forgetUnfinished, type UnfinishedRound, unfinishedRounds } from '../../storage/unfinished.ts';
import { goInPage } from '../../ui/in-page-link.ts';
import { placeName, ROUNDS } from './strings.ts';

export function Unfinished({ app }: { readonly app: App }) {
  const rounds = useSignal(unfinishedRounds(lastingStorage));
  if (rounds.value.length === 0) return null;
  const remove = (path: string) => {
    forgetUnfinished(lastingStorage, path);
    rounds.value = unfinishedRounds(lastingStorage);
  };
  return (
    <section class="round-group" aria-labelledby="unfinished-title">
      <h2 id="unfinished-title">{ROUNDS.unfinished}</h2>
      <ul>
        {rounds.value.map((round) => (
          <Row key={round.path} app={app} round={round} onRemove={() => remove(round.path)} />
        ))}
      </ul>
    </section>
  );
}

interface RowProps {
  readonly app: App;
  readonly round: UnfinishedRound;
  readonly onRemove: () => void;
}

function Row({ app, round, onRemove }: RowProps) {
  const [name = '', hash = ''] = round.path.split('#');
  return (
    <li class="round-row">
      <a
        href={round.path}
        onClick={(event) => goInPage(event, () => app.go(routeOf(name, hash && `#${hash}`)))}
      >
        <span class="round-name">{placeName(round)}</span>
        <span class="spoken">, </span>
        <span class="round-facts">{ROUNDS.goOn}</span>
      </a>
      <button type="button" onClick={onRemove}>
        {ROUNDS.takeOff}
        <span class="spoken"> {placeName(round)}</span>
      </button>
    </li>
  );
}
