// A lesson of one deal for tests: four east winds, tiles that are set to arrive, and words at three steps.
import type { Drill } from '../../shared-engine/drill/format.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { dealOf, drillOf } from './drills.ts';
import { seedNamed } from './rounds.ts';

const EASTS: readonly Face[] = ['east', 'east', 'east', 'east'];
const OTHERS: readonly Face[] = [
  'south',
  'west',
  'north',
  'bam-1',
  'bam-2',
  'bam-3',
  'red',
  'green',
  'joker',
];
export const WINDS_RACK: readonly Face[] = [...EASTS, ...OTHERS];

export const WINDS_LESSON: Drill = drillOf([
  dealOf(
    { kind: 'manual', racks: [WINDS_RACK, [], [], []], seed: seedNamed('winds') },
    {
      scripted: { arrivals: { 'first-right': ['dot-1', 'dot-2', 'dot-3'] } },
      comments: {
        'first-right': { chosen: ['red', 'green', 'west'], words: 'Keep the 1 bam.' },
        'first-across': { chosen: ['dot-1', 'dot-2', 'dot-3'] },
        'first-left': { chosen: ['south'], words: 'Two blind: nothing else is free.' },
        vote: { words: 'How would you vote?' },
      },
    },
  ),
]);
