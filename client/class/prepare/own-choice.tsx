// The teacher's own choice at a step: from the rack that the choices before it lead to, or from the whole set.
import {
  arrivalProblem,
  bagOf,
  type DrillDeal,
  type Face,
  type LessonMoment,
  PASS_SIZE,
  type PendingDecision,
  passObjection,
  pendingDecision,
  type Step,
} from '../../../shared-engine/index.ts';
import { chooseMore, optionName } from '../../room/step-names.ts';
import { RackPicker } from '../../tiles/rack-picker.tsx';
import { TilePicker } from '../../tiles/tile-picker.tsx';
import { TileRow } from '../../tiles/tile-row.tsx';
import { COMMENTS } from './strings.ts';

type Chosen = NonNullable<NonNullable<DrillDeal['comments']>[Step]>['chosen'];

interface OwnChoiceProps {
  readonly id: string;
  readonly step: Step;
  /** What is held at this step; null where that is not known. */
  readonly moment: LessonMoment | null;
  readonly chosen: Chosen;
  readonly onChosen: (chosen: Chosen) => void;
}

const NOTHING_HELD = bagOf([]);
const NUMBERS: { readonly [At in Step]?: readonly number[] } = { vote: [1, 0], 'courtesy-ask': [0, 1, 2, 3] };

export function OwnChoice({ id, step, moment, chosen, onChosen }: OwnChoiceProps) {
  const tiles = typeof chosen === 'object' ? chosen : [];
  const onTiles = (next: readonly Face[]) => onChosen(next.length === 0 ? undefined : next);
  const numbers = NUMBERS[step];
  if (numbers !== undefined) {
    return (
      <>
        {moment && (
          <>
            <Came moment={moment} />
            <p>
              <TileRow tiles={moment.view.rack} />
            </p>
          </>
        )}
        <NumberChoice {...{ id, step, chosen, onChosen, numbers }} />
      </>
    );
  }
  const decision = moment && pendingDecision(moment.view);
  if (moment === null || decision?.kind !== 'pass') {
    return (
      <TilePicker
        title={COMMENTS.tiles}
        laid={tiles}
        size={PASS_SIZE}
        problemWith={(next) => arrivalProblem(NOTHING_HELD, next, next.length)}
        onChange={onTiles}
      />
    );
  }
  return <HeldPicker moment={moment} decision={decision} tiles={tiles} onTiles={onTiles} />;
}

/** What the pass before brought. */
function Came({ moment: { arrived } }: { readonly moment: LessonMoment }) {
  if (arrived === null) return null;
  return (
    <p>
      {COMMENTS.came}: <TileRow tiles={arrived.tiles} />
    </p>
  );
}

interface HeldPickerProps {
  readonly moment: LessonMoment;
  readonly decision: PendingDecision & { readonly kind: 'pass' };
  readonly tiles: readonly Face[];
  readonly onTiles: (tiles: readonly Face[]) => void;
}

function HeldPicker({ moment, decision, tiles, onTiles }: HeldPickerProps) {
  const { rack } = moment.view;
  const { count, blindAllowed } = decision;
  const blind = blindAllowed && tiles.length > 0 ? Math.max(0, count - tiles.length) : 0;
  const objection = passObjection(bagOf(rack), decision, tiles, blind);
  const words = objection && (chooseMore(count, tiles.length) || objection.message);
  return (
    <section aria-label={COMMENTS.tiles}>
      <Came moment={moment} />
      <p>
        <b>{COMMENTS.tiles}</b>
      </p>
      <RackPicker
        rack={rack}
        chosen={placesOf(rack, tiles)}
        // The tile tapped first makes room for one too many.
        onChange={(places) => onTiles(places.slice(-count).map((place) => rack[place]!))}
      />
      <p role="status">{blind > 0 ? COMMENTS.blind(blind) : words}</p>
    </section>
  );
}

/** Where these tiles lie on the rack, each place once; a tile that it does not hold has none. */
function placesOf(rack: readonly Face[], tiles: readonly Face[]): readonly number[] {
  const places: number[] = [];
  for (const face of tiles) {
    const place = rack.findIndex((one, nth) => one === face && !places.includes(nth));
    if (place >= 0) places.push(place);
  }
  return places;
}

interface NumberChoiceProps extends Pick<OwnChoiceProps, 'id' | 'step' | 'chosen' | 'onChosen'> {
  readonly numbers: readonly number[];
}

function NumberChoice({ id, step, chosen, onChosen, numbers }: NumberChoiceProps) {
  return (
    <div class="field">
      <label for={`${id}-comment-choice`}>{COMMENTS.choice}</label>
      <select
        id={`${id}-comment-choice`}
        value={String(chosen ?? '')}
        onChange={(event) => onChosen(numbers.find((one) => String(one) === event.currentTarget.value))}
      >
        <option value="">{COMMENTS.none}</option>
        {numbers.map((one) => (
          <option key={one} value={one}>
            {optionName(step === 'vote' ? 'vote' : 'ask', one)}
          </option>
        ))}
      </select>
    </div>
  );
}
