// For the host: a link that seats a bot of one's own, shown once, and taking it back.
import { useSignal } from '@preact/signals';
import { botLink, type Seat } from '../../shared-engine/index.ts';
import { inviteBot } from '../connection/api.ts';
import { CopyLink } from './copy-link.tsx';
import type { Room } from './room.ts';
import { OWN_BOT } from './strings.ts';

interface BotInvitationProps {
  readonly room: Room;
  readonly seat: Seat;
  /** The link to this table. */
  readonly tableLink: string;
  /** Whether an invitation for this seat is out, made here or on another page of the host's. */
  readonly isInvited: boolean;
}

export function BotInvitation({ room, seat, tableLink, isInvited }: BotInvitationProps) {
  const secret = useSignal<string | null>(null);
  const problem = useSignal<string | null>(null);

  async function invite() {
    const answer = await inviteBot(room.state.value.code, seat);
    secret.value = answer.ok ? answer.value.secret : null;
    problem.value = answer.ok ? null : answer.message;
  }

  function revoke() {
    secret.value = null;
    room.act({ kind: 'revoke-invitation', seat });
  }

  return (
    <div class="own-bot">
      {isInvited && <p>{secret.value === null ? OWN_BOT.out : OWN_BOT.about}</p>}
      {isInvited && secret.value !== null && (
        <CopyLink link={botLink(tableLink, secret.value)} label={OWN_BOT.label} copied={OWN_BOT.copied} />
      )}
      <div class="row">
        <button type="button" onClick={() => void invite()}>
          {isInvited ? OWN_BOT.again : OWN_BOT.invite}
        </button>
        {isInvited && (
          <button type="button" onClick={revoke}>
            {OWN_BOT.revoke}
          </button>
        )}
      </div>
      <p role="alert">{problem.value}</p>
    </div>
  );
}
