// The pupils as the teacher sees them: where each is, since when, and what the teacher can do for one.
import type { Desk, DeskPupil } from '../../shared-engine/index.ts';
import { TileRow } from '../views/tile-row.tsx';
import type { Act } from './act.ts';
import { MORE_SECONDS } from './lead-panel.tsx';
import { useSeconds } from './news.ts';
import { clockOf, DESK, isDoing, whereIs } from './words.ts';

interface PupilListProps {
  readonly desk: Desk;
  /** On the page's own clock, in milliseconds, when the desk was told. */
  readonly at: number;
  readonly act: Act;
}

export function PupilList({ desk, at, act }: PupilListProps) {
  const { pupils, terms, ended } = desk;
  const passed = Math.max(0, useSeconds() - at);
  return (
    <section aria-labelledby="pupils-title">
      <h2 id="pupils-title">
        {DESK.pupils} ({pupils.length})
      </h2>
      {pupils.length === 0 ? (
        <p>{DESK.nobody}</p>
      ) : (
        <div class="scrolls">
          <table class="pupils">
            <thead>
              <tr>
                <th scope="col">{DESK.name}</th>
                <th scope="col">{DESK.step}</th>
                <th scope="col">{DESK.state}</th>
                <th scope="col">{DESK.clock}</th>
                {terms.racks && <th scope="col">{DESK.rack}</th>}
                <th scope="col">{DESK.help}</th>
              </tr>
            </thead>
            <tbody>
              {pupils.map((pupil) => (
                <tr key={pupil.id} class={pupil.present ? '' : 'away'}>
                  <th scope="row">{pupil.name}</th>
                  <td>{whereIs(pupil)}</td>
                  <td>{isDoing(pupil)}</td>
                  <td class="clock-cell">{clockCell(pupil, passed)}</td>
                  {terms.racks && <td>{pupil.rack && <TileRow tiles={pupil.rack} />}</td>}
                  <td>{!ended && <Help pupil={pupil} timed={terms.deadline !== null} act={act} />}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

function clockCell({ at, held, sealed, since, remaining }: DeskPupil, passed: number): string | null {
  if (at === 'waiting' || at === 'closed' || held || sealed) return null;
  return remaining === null ? clockOf(since + passed) : `${clockOf(remaining - passed)} ${DESK.left}`;
}

interface HelpProps {
  readonly pupil: DeskPupil;
  readonly timed: boolean;
  readonly act: Act;
}

function Help({ pupil: { id, name, standIn, at }, timed, act }: HelpProps) {
  const playing = at !== 'waiting' && at !== 'closed';
  return (
    <div class="row">
      <button
        type="button"
        aria-label={standIn ? DESK.backTo(name) : DESK.botFor(name)}
        onClick={() => act({ kind: 'stand-in', pupil: id, on: !standIn })}
      >
        {standIn ? DESK.back : DESK.bot}
      </button>
      {timed && playing && (
        <button
          type="button"
          aria-label={DESK.timeFor(name)}
          onClick={() => act({ kind: 'more-time', pupil: id, seconds: MORE_SECONDS })}
        >
          +{MORE_SECONDS} s
        </button>
      )}
    </div>
  );
}
