// What the page asks of the server about a published drill.
import {
  DRILLS_PATH,
  drillPath,
  drillPublishedSchema,
  drillReportSchema,
  type PublishDrill,
  type PublishedAction,
  publishedDashboardSchema,
  publishedDrillSchema,
  releasedSchema,
  roundSentSchema,
  type SendRound,
  teacherKeySchema,
} from '../../../shared-engine/index.ts';
import { type ApiResult, call, existence } from '../../connection/api.ts';
import type { Schema } from '../../connection/frame.ts';

/** The body of a successful answer is not needed. */
const ignored: Schema<null> = { safeParse: () => ({ success: true, data: null }) };
const GET = { method: 'GET' } as const;

export function publishDrill(request: PublishDrill) {
  return call(DRILLS_PATH, request, drillPublishedSchema);
}

export function fetchDrill(code: string) {
  return call(drillPath(code), null, publishedDrillSchema, GET);
}

export async function drillExists(code: string): Promise<ApiResult<boolean>> {
  return existence(await fetchDrill(code), 'no-such-drill');
}

export function fetchReleased(code: string) {
  return call(drillPath(code, 'released'), null, releasedSchema, GET);
}

export function sendRound(code: string, round: SendRound) {
  return call(drillPath(code, 'rounds'), round, roundSentSchema);
}

export function fetchDrillDashboard(code: string) {
  return call(drillPath(code, 'dashboard'), null, publishedDashboardSchema, GET);
}

export function fetchDrillReport(code: string) {
  return call(drillPath(code, 'report'), null, drillReportSchema, GET);
}

export function sendDrillAction(code: string, action: PublishedAction) {
  return call(drillPath(code, 'actions'), action, ignored);
}

export function makeDrillKey(code: string) {
  return call(drillPath(code, 'keys'), {}, teacherKeySchema);
}

export function bringDrillKey(code: string, key: string) {
  return call(drillPath(code, 'teacher'), { key }, ignored);
}
