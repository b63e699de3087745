// The card beside the rack: its hands drawn as tiles, with the tiles on the rack bright.
import { type Signal, useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { bagOf, type CompiledCard, type Face } from '../../shared-engine/index.ts';
import { Tile } from '../tiles/tile.tsx';
import { type CardMatch, cardMatches, nearestFirst } from './card-matches.ts';
import { CARD, matchDescription, matchSummary } from './strings.ts';

interface CardPanelProps {
  /** Answers null when the card cannot be had. */
  readonly load: () => Promise<CompiledCard | null>;
  readonly rack: readonly Face[];
  /** Whether the table plays with the nearest hands first; otherwise the card is in its own order (rule W6). */
  readonly nearestFirst: boolean;
}

/** Lines shown before the player asks for all of them. */
const SHORT_LIST = 8;

export function CardPanel({ load, rack, nearestFirst }: CardPanelProps) {
  const card = useSignal<CompiledCard | 'loading' | 'failed'>('loading');
  useEffect(() => {
    void load().then((loaded) => {
      card.value = loaded ?? 'failed';
    });
  }, [load, card]);
  return (
    <aside class="card-panel" aria-labelledby="card-title">
      <h2 id="card-title">{typeof card.value === 'string' ? CARD.title : card.value.name}</h2>
      {typeof card.value === 'string' ? (
        <p role="status">{CARD[card.value]}</p>
      ) : (
        <Matches card={card.value} rack={rack} sortable={nearestFirst} />
      )}
    </aside>
  );
}

interface MatchesProps {
  readonly card: CompiledCard;
  readonly rack: readonly Face[];
  readonly sortable: boolean;
}

function Matches({ card, rack, sortable }: MatchesProps) {
  const order = useSignal<'nearest' | 'printed'>(sortable ? 'nearest' : 'printed');
  const all = useSignal(false);
  // Every message brings a new rack array; only other tiles need another comparison.
  const matches = useMemo(() => cardMatches(card, bagOf(rack)), [card, rack.join(' ')]);
  const near = nearestFirst(matches);
  return (
    <>
      {sortable && <Orders order={order} />}
      <p class="about">{CARD.legend}</p>
      {order.value === 'nearest' ? (
        <>
          <MatchList matches={all.value ? near : near.slice(0, SHORT_LIST)} card={card} named />
          {!all.value && (
            <button
              type="button"
              onClick={() => {
                all.value = true;
              }}
            >
              {CARD.more}
            </button>
          )}
        </>
      ) : (
        card.sections.map(({ id, name }, section) => (
          <section key={id}>
            <h3>{name}</h3>
            <MatchList
              matches={matches.filter((match) => match.section === section)}
              card={card}
              named={false}
            />
          </section>
        ))
      )}
    </>
  );
}

function Orders({ order }: { readonly order: Signal<'nearest' | 'printed'> }) {
  return (
    <fieldset class="sorts">
      <legend class="spoken">{CARD.order}</legend>
      {(['nearest', 'printed'] as const).map((choice) => (
        <label key={choice} class="choice pill">
          <input
            type="radio"
            name="card-order"
            checked={order.value === choice}
            onChange={() => {
              order.value = choice;
            }}
          />
          <span>{CARD[choice]}</span>
        </label>
      ))}
    </fieldset>
  );
}

interface MatchListProps {
  readonly matches: readonly CardMatch[];
  readonly card: CompiledCard;
  readonly named: boolean;
}

function MatchList({ matches, card, named }: MatchListProps) {
  return (
    <ol class="card-matches">
      {matches.map((match) => (
        <li key={match.id}>
          <p class="match-summary">
            {named && <b>{card.sections[match.section]?.name}</b>} {matchSummary(match)}
          </p>
          <span class="spoken">{matchDescription(match)}</span>
          <div class="match-tiles">
            {match.tiles.map(({ face, status }, index) => (
              <span key={`${index}-${face}`} class={`match-tile ${status}`}>
                <Tile face={face} small />
              </span>
            ))}
          </div>
        </li>
      ))}
    </ol>
  );
}
