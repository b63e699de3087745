// All alternatives to a choice on one scale: the interval of each, against the choice that was made.
import { useSignal } from '@preact/signals';
import type { ChoiceReview, ChoiceStory, DeepAnalysis, Face, Finalist } from '../../shared-engine/index.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { DEEP, type DrawnRow, differenceSentence, finalistName } from './deep-strings.ts';
import { passWith } from './pass-with.ts';

interface AlternativesProps {
  readonly kind: ChoiceReview['kind'];
  readonly analysis: DeepAnalysis;
  readonly rows: ChoiceStory['rows'];
  /** The pass that the coach named before this choice; null where it named none. */
  readonly coached?: readonly Face[] | null;
}

/** Rows before the player asks for the rest. */
const FIRST_ROWS = 6;

export function Alternatives({ kind, analysis, rows, coached = null }: AlternativesProps) {
  const all = useSignal(false);
  const { finalists, played, bestAlternative, smallLoss, verdict } = analysis;
  const own = finalists[played];
  const named = bestAlternative === null ? undefined : finalists[bestAlternative];
  const ofCoach = coached && passWith(finalists, coached);
  const ranked = rows.map((place) => finalists[place]!);
  const shown = all.value
    ? ranked
    : ranked.filter((one, place) => place < FIRST_ROWS || [own, named, ofCoach].includes(one));
  const reach = reachOf(shown, smallLoss);
  return (
    <figure class="alternatives">
      <figcaption>{DEEP.alternatives}</figcaption>
      <div class="alternative scale-row" aria-hidden="true">
        <span />
        <span class="scale-head">
          <span>{DEEP.worse}</span>
          <span>{DEEP.better}</span>
        </span>
      </div>
      <ol>
        {shown.map((one) => {
          const mine = one === own;
          const drawn = mine ? 'own' : one === named ? 'named' : 'other';
          return (
            <li key={`${one.tiles.join()}${one.number}`} class={mine ? 'alternative mine' : 'alternative'}>
              <span class="alternative-name">
                {kind === 'pass' ? <TileRow tiles={one.tiles} /> : finalistName(kind, one)}
                {mine && <span class="tag">{DEEP.you}</span>}
                {one === named && <span class="tag">{DEEP.bestAlternative[verdict]}</span>}
                {one === ofCoach && <span class="tag">{DEEP.coach}</span>}
              </span>
              <span class="spoken">{differenceSentence(finalistName(kind, one), one, drawn)}</span>
              <Whiskers one={one} reach={reach} drawn={drawn} smallLoss={smallLoss} />
            </li>
          );
        })}
      </ol>
      <p class="aside">{DEEP.scale}</p>
      {shown.length < ranked.length && (
        <button
          type="button"
          onClick={() => {
            all.value = true;
          }}
        >
          {DEEP.more}
        </button>
      )}
    </figure>
  );
}

interface Reach {
  readonly from: number;
  readonly to: number;
}

/** One scale for all rows, in whole points; the choice made, at 0, always has room to both sides. */
function reachOf(finalists: readonly Finalist[], smallLoss: number): Reach {
  const ends = (side: 1 | -1) =>
    finalists.map(({ difference }) => difference.value + side * difference.halfWidth);
  return {
    from: Math.floor(Math.min(-2 * smallLoss, ...ends(-1))),
    to: Math.ceil(Math.max(2 * smallLoss, ...ends(1))),
  };
}

interface WhiskersProps {
  readonly one: Finalist;
  readonly reach: Reach;
  readonly drawn: DrawnRow;
  readonly smallLoss: number;
}

const WIDTH = 300;
const EDGE = 14;

function Whiskers({ one, reach, drawn, smallLoss }: WhiskersProps) {
  const x = (value: number) => EDGE + ((value - reach.from) / (reach.to - reach.from)) * (WIDTH - 2 * EDGE);
  const { value, halfWidth } = one.difference;
  return (
    <svg class="whiskers" viewBox={`0 0 ${WIDTH} 30`} aria-hidden="true" focusable="false">
      <rect class="whisker-band" x={x(-smallLoss)} width={x(smallLoss) - x(-smallLoss)} y="0" height="30" />
      <line class="whisker-zero" x1={x(0)} x2={x(0)} y1="0" y2="30" />
      {drawn === 'own' ? (
        <path class="scale-own" d={`M${x(0)} 6 l9 9 l-9 9 l-9 -9 z`} />
      ) : (
        <>
          <path
            class="whisker"
            d={`M${x(value - halfWidth)} 15 H${x(value + halfWidth)} M${x(value - halfWidth)} 9 V21 M${x(value + halfWidth)} 9 V21`}
          />
          {drawn === 'named' && <circle class="whisker-dot" cx={x(value)} cy="15" r="6" />}
        </>
      )}
    </svg>
  );
}
