// A request that a program may make, in the words of the OpenAPI document.
import type { RejectionCode } from '../../shared-engine/index.ts';
import type { Body } from './bodies.ts';

/** Whose secret a request needs. */
export type Caller = 'anybody' | 'seat' | 'invitation' | 'player' | 'teacher' | 'screen';

export interface Operation {
  readonly method: 'get' | 'post' | 'delete';
  readonly path: string;
  readonly summary: string;
  readonly callers: readonly Caller[];
  readonly body?: Body;
  /** Status of the good answer, and what is in it; null for nothing. */
  readonly good: Readonly<Record<number, Body | null>>;
  /** Besides those that any request may get. */
  readonly rejections: readonly RejectionCode[];
  /** Whether it answers when there is something newer than `seen`. */
  readonly waits?: boolean;
}
