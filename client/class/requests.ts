// What the desk, the wall and a player ask of the server about a class.
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
} from '../../shared-engine/index.ts';
import { call } from '../connection/api.ts';
import type { Schema } from '../connection/frame.ts';

/** An answer that says no more than that it was done. */
const done: Schema<null> = { safeParse: () => ({ success: true, data: null }) };

export function openClass(request: OpenClass) {
  return call(CLASSES_PATH, request, classOpenedSchema);
}

export function classInfo(code: string) {
  return call(classPath(code), null, classInfoSchema, 'GET');
}

export async function isClass(code: string): Promise<boolean> {
  return (await classInfo(code)).ok;
}

export function joinClass(code: string, name: string) {
  return call(classPath(code, 'players'), { name }, classJoinedSchema);
}

export function actIn(code: string, act: ClassAction) {
  return call(classPath(code, 'actions'), act, done);
}

export function nameAims(code: string, aims: ClassAims) {
  return call(classPath(code, 'aims'), aims, done);
}

export function reportOf(code: string) {
  return call(classPath(code, 'report'), null, drillReportSchema, 'GET');
}
