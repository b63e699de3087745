// The card beside the rack: lines drawn as tiles, the ones at hand lit.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { bagOf, type CompiledCard, type Face } from '../../shared-engine/index.ts';
import { Tile } from '../tiles/tile.tsx';
import { type CardMatch, cardMatches, nearestFirst } from './card-matches.ts';
import { CARD, matchDescription, matchSummary } from './strings.ts';

interface CardPanelProps {
  /** Answers null when the card cannot be had. */
  readonly load: () => Promise<CompiledCard | null>;
  readonly rack: readonly Face[];
}

/** Lines shown before the player asks for all of them. */
const SHORT_LIST = 8;

export function CardPanel({ load, rack }: CardPanelProps) {
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
        <Lines card={card.value} rack={rack} />
      )}
    </aside>
  );
}

function Lines({ card, rack }: { readonly card: CompiledCard; readonly rack: readonly Face[] }) {
  const order = useSignal<'nearest' | 'printed'>('nearest');
  const all = useSignal(false);
  // The rack comes anew with every message; only other tiles make another comparison.
  const lines = useMemo(() => cardMatches(card, bagOf(rack)), [card, rack.join(' ')]);
  const near = nearestFirst(lines);
  return (
    <>
      <fieldset class="sorts">
        <legend class="spoken">{CARD.order}</legend>
        {(['nearest', 'printed'] as const).map((wish) => (
          <label key={wish} class="choice pill">
            <input
              type="radio"
              name="card-order"
              checked={order.value === wish}
              onChange={() => {
                order.value = wish;
              }}
            />
            <span>{CARD[wish]}</span>
          </label>
        ))}
      </fieldset>
      <p class="about">{CARD.key}</p>
      {order.value === 'nearest' ? (
        <>
          <LineList lines={all.value ? near : near.slice(0, SHORT_LIST)} card={card} named />
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
            <LineList lines={lines.filter((line) => line.section === section)} card={card} named={false} />
          </section>
        ))
      )}
    </>
  );
}

interface LineListProps {
  readonly lines: readonly CardMatch[];
  readonly card: CompiledCard;
  readonly named: boolean;
}

function LineList({ lines, card, named }: LineListProps) {
  return (
    <ol class="card-lines">
      {lines.map((line) => (
        <li key={line.id}>
          <p class="line-words">
            {named && <b>{card.sections[line.section]?.name}</b>} {matchSummary(line)}
          </p>
          <span class="spoken">{matchDescription(line)}</span>
          <div class="line-tiles">
            {line.tiles.map(({ face, status }, index) => (
              <span key={`${index}-${face}`} class={`line-tile ${status}`}>
                <Tile face={face} small />
              </span>
            ))}
          </div>
        </li>
      ))}
    </ol>
  );
}
