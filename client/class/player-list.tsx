// The players as the teacher sees them: where each is, since when, and what the teacher can do for one.
import type { Dashboard, DashboardPlayer } from '../../shared-engine/index.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import type { Act } from './action.ts';
import { MORE_SECONDS } from './controls-panel.tsx';
import { clockOf, DESK, isDoing, whereIs } from './strings.ts';
import { useSeconds } from './use-updates.ts';

interface PlayerListProps {
  readonly desk: Dashboard;
  /** On the page's own clock, in milliseconds, when the desk was told. */
  readonly at: number;
  readonly act: Act;
}

export function PlayerList({ desk, at, act }: PlayerListProps) {
  const { players, terms, ended } = desk;
  const passed = Math.max(0, useSeconds() - at);
  return (
    <section aria-labelledby="players-title">
      <h2 id="players-title">
        {DESK.players} ({players.length})
      </h2>
      {players.length === 0 ? (
        <p>{DESK.nobody}</p>
      ) : (
        <div class="scrolls">
          <table class="players">
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
              {players.map((player) => (
                <tr key={player.id} class={player.present ? '' : 'away'}>
                  <th scope="row">{player.name}</th>
                  <td>{whereIs(player)}</td>
                  <td>{isDoing(player)}</td>
                  <td class="clock-cell">{clockCell(player, passed)}</td>
                  {terms.racks && <td>{player.rack && <TileRow tiles={player.rack} />}</td>}
                  <td>{!ended && <Help player={player} timed={terms.deadline !== null} act={act} />}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

function clockCell(
  { at, held, submitted, since, remaining }: DashboardPlayer,
  passed: number,
): string | null {
  if (at === 'waiting' || at === 'closed' || held || submitted) return null;
  return remaining === null ? clockOf(since + passed) : `${clockOf(remaining - passed)} ${DESK.left}`;
}

interface HelpProps {
  readonly player: DashboardPlayer;
  readonly timed: boolean;
  readonly act: Act;
}

function Help({ player: { id, name, standIn, at }, timed, act }: HelpProps) {
  const playing = at !== 'waiting' && at !== 'closed';
  return (
    <div class="row">
      <button
        type="button"
        aria-label={standIn ? DESK.backTo(name) : DESK.botFor(name)}
        onClick={() => act({ kind: 'stand-in', player: id, on: !standIn })}
      >
        {standIn ? DESK.back : DESK.bot}
      </button>
      {timed && playing && (
        <button
          type="button"
          aria-label={DESK.timeFor(name)}
          onClick={() => act({ kind: 'more-time', player: id, seconds: MORE_SECONDS })}
        >
          +{MORE_SECONDS} s
        </button>
      )}
    </div>
  );
}
