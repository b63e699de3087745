// What the page asks of the server about a class.
import {
  CLASSES_PATH,
  type ClassAction,
  type ClassAims,
  classInfoSchema,
  classJoinedSchema,
  classOpenedSchema,
  classPath,
  type Dashboard,
  type DashboardPlayer,
  drillReportSchema,
  drillSchema,
  type OpenClass,
  screenCodeSchema,
  teacherKeySchema,
} from '../../../shared-engine/index.ts';
import { type ApiResult, call, existence } from '../../connection/api.ts';
import type { Schema } from '../../connection/frame.ts';

/** Sends an action of the teacher; the dashboard shows what was rejected. */
export type Dispatch = (action: ClassAction) => void;

/** The body of a successful answer is not needed. */
const ignored: Schema<null> = { safeParse: () => ({ success: true, data: null }) };

export function openClass(request: OpenClass) {
  return call(CLASSES_PATH, request, classOpenedSchema);
}

export function fetchClassInfo(code: string) {
  return call(classPath(code), null, classInfoSchema, { method: 'GET' });
}

export async function classExists(code: string): Promise<ApiResult<boolean>> {
  return existence(await fetchClassInfo(code), 'no-such-class');
}

export function joinClass(code: string, name: string) {
  return call(classPath(code, 'players'), { name }, classJoinedSchema);
}

export function sendAction(code: string, action: ClassAction) {
  return call(classPath(code, 'actions'), action, ignored);
}

export function sendAims(code: string, aims: ClassAims) {
  return call(classPath(code, 'aims'), aims, ignored);
}

export function fetchDrill(code: string) {
  return call(classPath(code, 'drill'), null, drillSchema.loose(), { method: 'GET' });
}

export function fetchReport(code: string) {
  return call(classPath(code, 'report'), null, drillReportSchema, { method: 'GET' });
}

/** What of a dashboard an action says that it showed. */
interface SeenClass extends Pick<Dashboard, 'dealt'> {
  readonly players: readonly Pick<DashboardPlayer, 'id' | 'given'>[];
}

/**
 * The action with what its dashboard showed, so that two dashboards that do the same at once do it once, and what was
 * meant for another deal is not done.
 */
export function asSeen(action: ClassAction, { dealt, players }: SeenClass): ClassAction {
  switch (action.kind) {
    case 'deal-next':
    case 'hold':
    case 'show':
    case 'advance':
      return { ...action, dealt };
    case 'more-time':
      return { ...action, given: Object.fromEntries(players.map(({ id, given }) => [id, given])) };
    default:
      return action;
  }
}

export function makeKey(code: string) {
  return call(classPath(code, 'keys'), {}, teacherKeySchema);
}

export function bringKey(code: string, key: string) {
  return call(classPath(code, 'teacher'), { key }, ignored);
}

export function makeScreenCode(code: string) {
  return call(classPath(code, 'screen-codes'), {}, screenCodeSchema);
}

export function bringScreenCode(code: string, screenCode: string) {
  return call(classPath(code, 'screens'), { code: screenCode }, ignored);
}
