// For the host: a link that seats a bot of one's own on the next free seat, shown once.
import { useSignal } from '@preact/signals';
import { botLink, SEATS, type Seat, type SeatInfo, type Table } from '../../shared-engine/index.ts';
import { inviteBot } from '../connection/api.ts';
import { CopyLink } from './copy-link.tsx';
import { OWN_BOT } from './strings.ts';

interface BotInvitationProps {
  readonly table: Table;
  /** The link to this table. */
  readonly tableLink: string;
}

export function BotInvitation({ table, tableLink }: BotInvitationProps) {
  const made = useSignal<{ readonly seat: Seat; readonly secret: string } | null>(null);
  const problem = useSignal<string | null>(null);
  const seat = nextSeat(table);
  const link = made.value && isInvited(table.seats[made.value.seat]) ? made.value : null;

  async function invite(to: Seat) {
    const answer = await inviteBot(table.code, to);
    made.value = answer.ok ? answer.value : null;
    problem.value = answer.ok ? null : answer.message;
  }

  return (
    <details class="panel own-bot">
      <summary>{OWN_BOT.title}</summary>
      <p>{OWN_BOT.about}</p>
      {link && (
        <>
          <p>{OWN_BOT.once}</p>
          <CopyLink link={botLink(tableLink, link.secret)} label={OWN_BOT.label} copied={OWN_BOT.copied} />
        </>
      )}
      {seat === null ? (
        <p>{OWN_BOT.noSeat}</p>
      ) : (
        <button type="button" onClick={() => void invite(seat)}>
          {OWN_BOT.make}
        </button>
      )}
      <p role="alert">{problem.value}</p>
    </details>
  );
}

/** Whether an invitation for this seat is out. */
export function isInvited(info: SeatInfo): boolean {
  return info.kind !== 'person' && info.invited === true;
}

/** Whether somebody may sit down here before the next deal. */
export function isFree(info: SeatInfo): boolean {
  return info.kind === 'empty' || (info.kind === 'bot' && info.external === undefined);
}

/** An empty seat first, then one of a bot of the server; null where there is none left. */
function nextSeat({ seats }: Table): Seat | null {
  const free = SEATS.filter((seat) => isFree(seats[seat]) && !isInvited(seats[seat]));
  return free.find((seat) => seats[seat].kind === 'empty') ?? free[0] ?? null;
}
