// How the parts of the desk ask for something: the desk itself sends it and tells what was refused.
import type { ClassAction } from '../../shared-engine/index.ts';

export type Act = (act: ClassAction) => void;
