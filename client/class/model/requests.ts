// What the page asks of the server about a class.
import {
  CLASSES_PATH,
  type ClassAction,
  type ClassAims,
  classInfoSchema,
  classJoinedSchema,
  classOpenedSchema,
  classPath,
  drillReportSchema,
  type OpenClass,
} from '../../../shared-engine/index.ts';
import { call } from '../../connection/api.ts';
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

export async function classExists(code: string): Promise<boolean> {
  return (await fetchClassInfo(code)).ok;
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

export function fetchReport(code: string) {
  return call(classPath(code, 'report'), null, drillReportSchema, { method: 'GET' });
}
