// The players as the teacher sees them: where each is, since when, and what the teacher can do for one.
import type { Dashboard, DashboardPlayer } from '../../../shared-engine/index.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import type { Dispatch } from '../model/requests.ts';
import { useSeconds } from '../model/use-updates.ts';
import { MORE_SECONDS } from './controls-panel.tsx';
import { RenameForm, SeatForm } from './player-place.tsx';
import { clockText, DASHBOARD, PLACES, placeText, statusText } from './strings.ts';

interface PlayerListProps {
  readonly dashboard: Dashboard;
  /** When the dashboard was last updated, in milliseconds of the page's own clock. */
  readonly at: number;
  readonly dispatch: Dispatch;
}

export function PlayerList({ dashboard, at, dispatch }: PlayerListProps) {
  const { players, terms, ended } = dashboard;
  const elapsed = Math.max(0, useSeconds() - at);
  return (
    <section aria-labelledby="players-title">
      <h2 id="players-title">
        {DASHBOARD.players} ({players.length})
      </h2>
      {players.length === 0 ? (
        <p>{DASHBOARD.nobody}</p>
      ) : (
        <div class="scrolls">
          <table class="players">
            <thead>
              <tr>
                <th scope="col">{DASHBOARD.name}</th>
                <th scope="col">{DASHBOARD.place}</th>
                <th scope="col">{DASHBOARD.clock}</th>
                {terms.racks && <th scope="col">{DASHBOARD.rack}</th>}
                <th scope="col">{DASHBOARD.help}</th>
              </tr>
            </thead>
            <tbody>
              {inOrder(players).map((player) => (
                <tr key={player.id}>
                  <th scope="row">{player.name}</th>
                  <td>
                    {dashboard.form === 'tables' && `${PLACES.at(player.table, player.seat)} · `}
                    {placeText(player)} · {statusText(player)}
                  </td>
                  <td class="clock-cell">{clockCell(player, elapsed)}</td>
                  {terms.racks && <td>{player.rack && <TileRow tiles={player.rack} />}</td>}
                  <td>{!ended && <Help player={player} dashboard={dashboard} dispatch={dispatch} />}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

/** Who is away comes first, then whom the others wait for; who joined first is first among equals. */
function inOrder(players: readonly DashboardPlayer[]): readonly DashboardPlayer[] {
  const rank = ({ present, standIn, submitted, held, at }: DashboardPlayer): number => {
    if (!present && !standIn) return 0;
    return submitted || held || standIn || at === 'closed' || at === 'waiting' ? 2 : 1;
  };
  return [...players].sort((a, b) => rank(a) - rank(b) || a.id - b.id);
}

function clockCell(player: DashboardPlayer, elapsed: number): string | null {
  const { at, held, submitted, since, remaining } = player;
  if (at === 'waiting' || at === 'after-vote' || at === 'closed' || held || submitted) return null;
  return remaining === null
    ? clockText(since + elapsed)
    : `${clockText(remaining - elapsed)} ${DASHBOARD.left}`;
}

interface HelpProps {
  readonly player: DashboardPlayer;
  readonly dashboard: Dashboard;
  readonly dispatch: Dispatch;
}

function Help({ player, dashboard: { terms, players, openTables }, dispatch }: HelpProps) {
  const { id, name, standIn, at } = player;
  const playing = at !== 'waiting' && at !== 'closed';
  return (
    <div class="row">
      <button
        type="button"
        aria-label={standIn ? DASHBOARD.backTo(name) : DASHBOARD.botFor(name)}
        onClick={() => dispatch({ kind: 'stand-in', player: id, on: !standIn })}
      >
        {standIn ? DASHBOARD.back : DASHBOARD.bot}
      </button>
      <details class="player-more">
        <summary aria-label={DASHBOARD.moreFor(name)}>{DASHBOARD.more}</summary>
        <RenameForm key={name} player={player} dispatch={dispatch} />
        {openTables > 0 && (
          <SeatForm
            key={`${player.table} ${player.seat}`}
            player={player}
            tables={openTables}
            players={players}
            dispatch={dispatch}
          />
        )}
        {terms.deadline !== null && playing && (
          <button
            type="button"
            aria-label={DASHBOARD.timeFor(name)}
            onClick={() => dispatch({ kind: 'more-time', player: id, seconds: MORE_SECONDS })}
          >
            +{MORE_SECONDS} s
          </button>
        )}
        <ConfirmButton
          name={DASHBOARD.remove(name)}
          yes={DASHBOARD.removeSure}
          no={DASHBOARD.removeNot}
          about={DASHBOARD.removeAbout}
          onYes={() => dispatch({ kind: 'remove', player: id })}
        />
      </details>
    </div>
  );
}
