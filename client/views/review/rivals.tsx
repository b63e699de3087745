// All alternatives of a choice on one scale: a dot with whiskers each, against the choice that was made.
import { useSignal } from '@preact/signals';
import type { ChoiceReview, DeepJudgement, Finalist } from '../../../shared-engine/index.ts';
import { aheadWords, finalistName, JUDGEMENT } from '../../words/judgement.ts';
import { TileRow } from '../tile-row.tsx';

interface RivalsProps {
  readonly kind: ChoiceReview['kind'];
  readonly judgement: DeepJudgement;
}

/** Rows before the player asks for the rest. */
const FIRST_ROWS = 6;

export function Rivals({ kind, judgement }: RivalsProps) {
  const all = useSignal(false);
  const { finalists, played, rival, smallLoss, verdict } = judgement;
  const own = finalists[played];
  const named = rival === null ? undefined : finalists[rival];
  const ranked = finalists.toSorted((a, b) => b.ahead.value - a.ahead.value);
  const shown = all.value
    ? ranked
    : ranked.filter((one, place) => place < FIRST_ROWS || one === own || one === named);
  const reach = reachOf(ranked, smallLoss);
  return (
    <figure class="rivals">
      <figcaption>{JUDGEMENT.rivals}</figcaption>
      <ol>
        {shown.map((one) => {
          const mine = one === own;
          return (
            <li key={`${one.tiles.join()}${one.number}`} class={mine ? 'rival mine' : 'rival'}>
              <span class="rival-name">
                {kind === 'pass' ? <TileRow tiles={one.tiles} /> : finalistName(kind, one)}
                {mine && <span class="tag">{JUDGEMENT.you}</span>}
                {one === named && <span class="tag">{JUDGEMENT.rival[verdict]}</span>}
              </span>
              <span class="spoken">{aheadWords(finalistName(kind, one), one, mine)}</span>
              <Whiskers one={one} reach={reach} mine={mine} smallLoss={smallLoss} />
            </li>
          );
        })}
      </ol>
      <p class="aside">
        {JUDGEMENT.scale} {JUDGEMENT.band}
      </p>
      {shown.length < ranked.length && (
        <button
          type="button"
          onClick={() => {
            all.value = true;
          }}
        >
          {JUDGEMENT.more}
        </button>
      )}
    </figure>
  );
}

/** The scale is the same for all rows and for both sides of the choice made, in whole points. */
function reachOf(finalists: readonly Finalist[], smallLoss: number): number {
  const ends = finalists.map(({ ahead }) => Math.abs(ahead.value) + ahead.within);
  return Math.ceil(Math.max(2 * smallLoss, ...ends));
}

interface WhiskersProps {
  readonly one: Finalist;
  readonly reach: number;
  readonly mine: boolean;
  readonly smallLoss: number;
}

const WIDTH = 300;
const EDGE = 14;

function Whiskers({ one, reach, mine, smallLoss }: WhiskersProps) {
  const x = (value: number) => WIDTH / 2 + (value / reach) * (WIDTH / 2 - EDGE);
  const { value, within } = one.ahead;
  return (
    <svg class="whiskers" viewBox={`0 0 ${WIDTH} 30`} aria-hidden="true" focusable="false">
      <rect class="whisker-band" x={x(-smallLoss)} width={x(smallLoss) - x(-smallLoss)} y="0" height="30" />
      <line class="whisker-zero" x1={x(0)} x2={x(0)} y1="0" y2="30" />
      {mine ? (
        <path class="scale-own" d={`M${x(0)} 6 l9 9 l-9 9 l-9 -9 z`} />
      ) : (
        <>
          <path
            class="whisker"
            d={`M${x(value - within)} 15 H${x(value + within)} M${x(value - within)} 9 V21 M${x(value + within)} 9 V21`}
          />
          <circle class="whisker-dot" cx={x(value)} cy="15" r="6" />
        </>
      )}
    </svg>
  );
}
