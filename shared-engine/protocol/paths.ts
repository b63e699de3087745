// Every path of the server that a page or another program may call.

/** The socket; the first frame on it is `hello` with a ticket. */
export const SOCKET_PATH = '/api/socket';

/**
 * The same with the code of the room that the ticket is for. The server does not read it: a proxy in front of several
 * servers may go by it, and keep the people of a room at one of them.
 */
export function socketPath(code: string): string {
  return `${SOCKET_PATH}?room=${encodeURIComponent(code)}`;
}

/** `GET`: `versionSchema`. */
export const VERSION_PATH = '/api/version';

/** `POST` opens a room: `openRoomSchema` → `roomOpenedSchema`. */
export const ROOMS_PATH = '/api/rooms';

/** `GET`: the card file of the house card. */
export const HOUSE_CARD_PATH = '/api/cards/house';

/** `GET`: `lobbySchema`. The code must be spelled as the server spells it: the seat's cookie is bound to this path. */
export function roomPath(code: string): string {
  return `${ROOMS_PATH}/${encodeURIComponent(code)}`;
}

/** `POST`: `claimSeatSchema` → `seatClaimedSchema`; a request with a seat's cookie gets the seat already held. */
export function seatsPath(code: string): string {
  return `${roomPath(code)}/seats`;
}

/** `POST`, the host alone: `inviteBotSchema` → `botInvitedSchema`, an invitation for a bot that runs elsewhere. */
export function invitationsPath(code: string): string {
  return `${roomPath(code)}/invitations`;
}

/** `POST` with the secret of an invitation: `seatBotSchema` → `seatClaimedSchema` with the seat's own secret. */
export function botsPath(code: string): string {
  return `${roomPath(code)}/bots`;
}

/** `POST` without a body: `ticketSchema`; for the seat of the cookie, or for a spectator without one. */
export function ticketPath(code: string): string {
  return `${roomPath(code)}/ticket`;
}

/** `GET`: the card file that this room plays with. */
export function cardPath(code: string): string {
  return `${roomPath(code)}/card`;
}

/** With the seat's cookie, `GET` answers the data stored about this person; `DELETE` gives up the seat and deletes it. */
export function personalDataPath(code: string): string {
  return `${roomPath(code)}/personal-data`;
}

/**
 * With a player's or the teacher's cookie, `GET` answers the data stored about that person; `DELETE` deletes it, and with
 * `/player` behind it never the class.
 */
export function classPersonalDataPath(code: string): string {
  return `${classPath(code)}/personal-data`;
}

/** The link to a table that one friend sends to another. */
export function tablePath(code: string): string {
  return `/t/${encodeURIComponent(code)}`;
}

/** The link that a host hands to a bot; the secret stands behind the `#`, which is sent to no server. */
export function botLink(tableLink: string, secret: string): string {
  return `${tableLink}#bot=${secret}`;
}

/** `POST` opens one deal for friends without a teacher: `openSameDealSchema` → `classOpenedSchema`. */
export const SAME_DEALS_PATH = '/api/same-deals';

/** `POST` opens a class. */
export const CLASSES_PATH = '/api/classes';

type ClassPathPart =
  | ''
  | 'players'
  | 'actions'
  | 'aims'
  | 'choices'
  | 'dashboard'
  | 'big-screen'
  | 'report'
  | 'drill'
  | 'deals'
  | 'keys'
  | 'teacher'
  | 'screen-codes'
  | 'screens';

export function classPath(code: string, part: ClassPathPart = ''): string {
  const path = `${CLASSES_PATH}/${encodeURIComponent(code)}`;
  return part === '' ? path : `${path}/${part}`;
}

/** Pages of a class beside its first one. */
export const CLASS_PAGES = ['big-screen', 'report'] as const;

/** The link of a class: players join there, the teacher leads from there. */
export function classLink(code: string, page: (typeof CLASS_PAGES)[number] | null = null): string {
  const link = `/c/${encodeURIComponent(code)}`;
  return page === null ? link : `${link}/${page}`;
}

/** The link that opens a class's dashboard; the teacher's key stands behind the `#`, which is sent to no server. */
export function teacherLink(link: string, key: string): string {
  return `${link}#key=${key}`;
}

/** `POST` publishes a drill: `publishDrillSchema` → `drillPublishedSchema`. */
export const DRILLS_PATH = '/api/drills';

type DrillPathPart =
  | ''
  | 'rounds'
  | 'released'
  | 'dashboard'
  | 'report'
  | 'actions'
  | 'keys'
  | 'teacher'
  | 'personal-data'
  | 'personal-data/device';

export function drillPath(code: string, part: DrillPathPart = ''): string {
  const path = `${DRILLS_PATH}/${encodeURIComponent(code)}`;
  return part === '' ? path : `${path}/${part}`;
}

/** The link of a published drill: players play there, and its teacher reads how they did. */
export function drillLink(code: string): string {
  return `/d/${encodeURIComponent(code)}`;
}

/** `POST` makes a club's page: `makeClubSchema` → `clubMadeSchema`. */
export const CLUBS_PATH = '/api/clubs';

/** `GET`: `clubPageSchema`; `DELETE`, its teacher alone, deletes the page. */
export function clubPath(code: string, part: '' | 'actions' | 'keys' | 'teacher' = ''): string {
  const path = `${CLUBS_PATH}/${encodeURIComponent(code)}`;
  return part === '' ? path : `${path}/${part}`;
}

/** `POST`, the host alone: `listTableSchema`. */
export function tableClubPath(code: string): string {
  return `${roomPath(code)}/club`;
}

/** The link of a club's page. */
export function clubLink(code: string): string {
  return `/club/${encodeURIComponent(code)}`;
}

/** Where a teacher prepares a class. */
export const PREPARE_PATH = '/lead';
