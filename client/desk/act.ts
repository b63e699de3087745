// How the parts of the desk ask for something: the desk itself sends it and tells what was refused.
import type { ClassAct } from '../../shared-engine/index.ts';

export type Act = (act: ClassAct) => void;
