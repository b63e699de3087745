// The card beside the rack: its hands drawn as tiles, with the tiles on the rack bright.
import { type Signal, useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { bagOf, type CompiledCard, type Face, type Reach } from '../../shared-engine/index.ts';
import { Tile } from '../tiles/tile.tsx';
import { openReachFinder, type ReachFinder } from '../workers/card-reach.ts';
import { type CardMatch, cardMatches, likeliestMatches } from './card-matches.ts';
import { CARD, matchDescription, matchSummary } from './strings.ts';

interface CardPanelProps {
  /** Answers null when the card cannot be had. */
  readonly load: () => Promise<CompiledCard | null>;
  readonly rack: readonly Face[];
  /** Whether the table plays with the nearest hands first; otherwise the card is in its own order (rule W6). */
  readonly nearestFirst: boolean;
  /** Tiles that this seat passed on, where the table may look that up; one that came back is no longer gone. */
  readonly gone: readonly Face[];
  readonly onClose: () => void;
}

/** Lines shown before the player asks for all of them. */
const SHORT_LIST = 8;

export function CardPanel({ load, rack, nearestFirst, gone, onClose }: CardPanelProps) {
  const card = useSignal<CompiledCard | 'loading' | 'failed'>('loading');
  useEffect(() => {
    void load().then((loaded) => {
      card.value = loaded ?? 'failed';
    });
  }, [load, card]);
  return (
    <aside class="card-panel" aria-labelledby="card-title">
      <header class="card-head">
        <h2 id="card-title">{typeof card.value === 'string' ? CARD.title : card.value.name}</h2>
        <button type="button" class="card-close" onClick={onClose}>
          {CARD.close}
        </button>
      </header>
      {typeof card.value === 'string' ? (
        <p role="status">{CARD[card.value]}</p>
      ) : (
        <Matches card={card.value} rack={rack} sortable={nearestFirst} gone={gone} />
      )}
    </aside>
  );
}

interface MatchesProps {
  readonly card: CompiledCard;
  readonly rack: readonly Face[];
  readonly sortable: boolean;
  readonly gone: readonly Face[];
}

function Matches({ card, rack, sortable, gone }: MatchesProps) {
  const order = useSignal<'nearest' | 'printed'>(sortable ? 'nearest' : 'printed');
  const all = useSignal(false);
  const wanted = useSignal<number | null>(null);
  // Every message brings a new rack array; only other tiles need another comparison.
  const tiles = rack.join(' ');
  const matches = useMemo(() => cardMatches(card, bagOf(rack)), [card, tiles]);
  const reach = useReach(sortable, { card, rack, gone });
  const isShown = ({ section }: CardMatch) => wanted.value === null || section === wanted.value;
  const near = reach && likeliestMatches(card, matches, reach).filter(isShown);
  const listed = { card, gone };
  return (
    <>
      <div class="row">
        {sortable && <Orders order={order} />}
        <SectionChoice card={card} wanted={wanted} />
      </div>
      <p class="about">{CARD.legend}</p>
      {order.value === 'printed' ? (
        card.sections.map(
          ({ id, name }, section) =>
            (wanted.value === null || section === wanted.value) && (
              <section key={id}>
                <h3>{name}</h3>
                <MatchList {...listed} matches={matches.filter((match) => match.section === section)} />
              </section>
            ),
        )
      ) : near === null ? (
        <p role="status">{CARD.working}</p>
      ) : (
        <>
          <p class="about">{CARD.nearestAbout}</p>
          <MatchList {...listed} matches={all.value ? near : near.slice(0, SHORT_LIST)} named />
          {!all.value && near.length > SHORT_LIST && (
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
      )}
    </>
  );
}

/** Worked out beside the page, where it is `wanted`; the order of the rack before stands until then. */
function useReach(
  wanted: boolean,
  { card, rack, gone }: Pick<MatchesProps, 'card' | 'rack' | 'gone'>,
): readonly Reach[] | null {
  const reach = useSignal<readonly Reach[] | null>(null);
  const finder = useRef<ReachFinder | null>(null);
  const tiles = `${rack.join(' ')}/${gone.join(' ')}`;
  useEffect(() => {
    if (!wanted) return;
    finder.current = openReachFinder(card, (found) => {
      reach.value = found;
    });
    return () => finder.current?.close();
  }, [card, wanted]);
  useEffect(() => finder.current?.find(rack, gone), [card, tiles]);
  return reach.value;
}

function SectionChoice({
  card,
  wanted,
}: {
  readonly card: CompiledCard;
  readonly wanted: Signal<number | null>;
}) {
  return (
    <select
      class="section-choice"
      aria-label={CARD.section}
      value={String(wanted.value)}
      onChange={({ currentTarget }) => {
        const at = Number(currentTarget.value);
        wanted.value = currentTarget.value !== 'null' && card.sections[at] ? at : null;
      }}
    >
      <option value="null">{CARD.allSections}</option>
      {card.sections.map(({ id, name }, section) => (
        <option key={id} value={String(section)}>
          {name}
        </option>
      ))}
    </select>
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
  readonly gone: readonly Face[];
  readonly named?: boolean;
}

function MatchList({ matches, card, gone, named = false }: MatchListProps) {
  return (
    <ol class="card-matches">
      {matches.map((match) => (
        <li key={match.id}>
          <p class="match-summary">
            {named && <b>{card.sections[match.section]?.name}</b>} {matchSummary(match, gone)}
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
