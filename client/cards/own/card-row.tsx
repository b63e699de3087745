// One card in the list of My cards, and the button that gets a card from a file.
import { MY_CARDS } from './strings.ts';

export type CardAction = readonly [string, () => void];

interface CardRowProps {
  readonly name: string;
  readonly about: string;
  readonly playing: boolean;
  readonly onPlay: () => void;
  /** The first two are always shown. */
  readonly actions: readonly CardAction[];
}

export function CardRow({ name, about, playing, onPlay, actions }: CardRowProps) {
  const button = ([word, run]: CardAction) => (
    <button key={word} type="button" aria-label={`${word}: ${name}`} onClick={run}>
      {word}
    </button>
  );
  return (
    <li class="card-row">
      <h2>{name}</h2>
      <p class="about">{about}</p>
      {playing && <p class="playing">{MY_CARDS.playing}</p>}
      <div class="row">
        {!playing && (
          <button type="button" aria-label={`${MY_CARDS.play}: ${name}`} onClick={onPlay}>
            {MY_CARDS.play}
          </button>
        )}
        {actions.slice(0, 2).map(button)}
      </div>
      {actions.length > 2 && (
        <details>
          <summary>
            {MY_CARDS.more}
            <span class="spoken">: {name}</span>
          </summary>
          <div class="row">{actions.slice(2).map(button)}</div>
        </details>
      )}
    </li>
  );
}
