// What came of the choice at the table: the tiles that arrived, who stopped, who asked for how many.
import { useState } from 'preact/hooks';
import {
  type AnswerChoice,
  arrivalProblem,
  type Face,
  forFour,
  giverTo,
  type LaidExchange,
  type LaidOutcome,
  MOVES,
  SEATS,
  type Seat,
  sortFaces,
  takeFrom,
  withSeat,
} from '../../../shared-engine/index.ts';
import { laidProblemWords } from '../../tiles/picker-strings.ts';
import { TilePicker } from '../../tiles/tile-picker.tsx';
import { Numbers } from '../question/numbers.tsx';
import { OWN_SEAT, OWN_TILES, placeName } from './strings.ts';

interface OutcomeFormProps {
  readonly exchange: LaidExchange;
  readonly onOutcome: (outcome: LaidOutcome) => void;
}

const OTHERS = SEATS.filter((seat) => seat !== OWN_SEAT);

export function OutcomeForm({ exchange, onOutcome }: OutcomeFormProps) {
  const { chosen } = exchange;
  switch (chosen?.kind) {
    case 'pass':
      return <Arrival key={chosen.step} exchange={exchange} chosen={chosen} onOutcome={onOutcome} />;
    case 'vote':
      return <Votes onOutcome={onOutcome} />;
    case 'ask':
      return <Asks own={chosen.count} onOutcome={onOutcome} />;
    case undefined:
      return null;
  }
}

interface ArrivalProps extends OutcomeFormProps {
  readonly chosen: AnswerChoice & { readonly kind: 'pass' };
}

function Arrival({ exchange, chosen: { step, tiles, blind }, onOutcome }: ArrivalProps) {
  const [laid, setLaid] = useState<readonly Face[]>([]);
  const [blindOf, setBlindOf] = useState(forFour((seat) => (seat === OWN_SEAT ? blind : 0)));
  const from = placeName(giverTo(OWN_SEAT, MOVES[step].toward)).toLowerCase();
  const rest = takeFrom(exchange.rack, tiles) ?? exchange.rack;
  const problemWith = (next: readonly Face[]) => arrivalProblem(rest, next, tiles.length);
  const problem = problemWith(laid);
  const [isAsked, setAsked] = useState(false);
  const done = () => {
    setAsked(problem !== null);
    if (problem === null) onOutcome({ kind: 'arrival', tiles: laid, blind: blindOf });
  };
  return (
    <section class="own-step" aria-label={OWN_TILES.arrived(from)}>
      {tiles.length > 0 && (
        <TilePicker
          title={OWN_TILES.arrived(from)}
          laid={laid}
          size={tiles.length}
          beside={rest}
          problemWith={problemWith}
          onChange={(next) => setLaid(sortFaces(next))}
        />
      )}
      {MOVES[step].blind && exchange.table.terms.blindPasses && (
        <details class="panel">
          <summary>{OWN_TILES.othersBlind}</summary>
          {OTHERS.map((seat) => (
            <Numbers
              key={seat}
              name={`blind-${seat}`}
              legend={placeName(seat)}
              value={blindOf[seat]}
              label={String}
              onChange={(value) => setBlindOf(withSeat(blindOf, seat, value))}
            />
          ))}
        </details>
      )}
      <button type="button" class="primary confirm" aria-disabled={problem !== null} onClick={done}>
        {OWN_TILES.arrivedDone}
      </button>
      <p role="alert">{isAsked && problem && laidProblemWords(problem)}</p>
    </section>
  );
}

function Votes({ onOutcome }: Pick<OutcomeFormProps, 'onOutcome'>) {
  const [stopped, setStopped] = useState<readonly Seat[]>([]);
  return (
    <section class="own-step">
      <fieldset>
        <legend>{OWN_TILES.stopped}</legend>
        <p class="aside">{OWN_TILES.nobodyStopped}</p>
        <div class="row">
          {OTHERS.map((seat) => (
            <label key={seat} class="choice pill">
              <input
                type="checkbox"
                checked={stopped.includes(seat)}
                onChange={(event) =>
                  setStopped(
                    event.currentTarget.checked ? [...stopped, seat] : stopped.filter((one) => one !== seat),
                  )
                }
              />
              <span>{placeName(seat)}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <button type="button" class="primary confirm" onClick={() => onOutcome({ kind: 'votes', stopped })}>
        {OWN_TILES.goOn}
      </button>
    </section>
  );
}

function Asks({ own, onOutcome }: Pick<OutcomeFormProps, 'onOutcome'> & { readonly own: number }) {
  const [asked, setAsked] = useState(forFour((seat) => (seat === OWN_SEAT ? own : 0)));
  const numbers = (seat: Seat, legend: string) => (
    <Numbers
      key={seat}
      name={`asked-${seat}`}
      legend={legend}
      value={asked[seat]}
      label={String}
      onChange={(value) => setAsked(withSeat(asked, seat, value))}
    />
  );
  return (
    <section class="own-step">
      {numbers(2, OWN_TILES.asked(placeName(2).toLowerCase()))}
      <details class="panel">
        <summary>{OWN_TILES.askedOthers}</summary>
        {numbers(1, placeName(1))}
        {numbers(3, placeName(3))}
      </details>
      <button type="button" class="primary confirm" onClick={() => onOutcome({ kind: 'asks', asked })}>
        {OWN_TILES.goOn}
      </button>
    </section>
  );
}
