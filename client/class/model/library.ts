// A teacher's drills and classes on this device: a stored drill read again, and a class opened with one.
import { type Drill, type DrillFile, drillFileText } from '../../../shared-engine/index.ts';
import { randomHex } from '../../connection/random.ts';
import { noteClass } from '../../storage/history/teaching.ts';
import { openClass } from './requests.ts';

/** Characters of the group that a teacher puts a drill or a class in. */
export const LONGEST_GROUP = 60;

/** Of a class for which nothing else was said. */
export const USUAL_CLASS: NonNullable<DrillFile['class']> = {
  deadline: null,
  racks: false,
  names: false,
  cardClosed: false,
};

export const newDrillId = (): string => randomHex(16);

/** The file of a row as this page has stored it: whole or not, it can be edited. */
export function storedDrill(text: string): DrillFile {
  const { card, class: classPart, ...drill }: Drill & Pick<DrillFile, 'card' | 'class'> = JSON.parse(text);
  return { drill, ...(card && { card }), ...(classPart && { class: classPart }) };
}

/** Opens a class with a drill and notes it on this device. */
export async function startClass(file: DrillFile, group: string) {
  const card = file.card === undefined || file.card === 'house' ? null : file.card;
  const answer = await openClass({ drill: file.drill, terms: file.class ?? USUAL_CLASS, card });
  if (answer.ok) {
    const { title } = file.drill;
    await noteClass(answer.value.code, { title, group, drill: drillFileText(file) }, Date.now());
  }
  return answer;
}
