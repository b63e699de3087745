// The drill of a class on a device that did not open it: fetched with the teacher's key, and stored from then on.
import { noteClass, readClass } from '../../storage/history/teaching.ts';
import { fetchDrill } from './requests.ts';

/** The drill file as this device has it from now on; null where it can neither be read here nor fetched. */
export async function classDrill(code: string): Promise<string | null> {
  const read = await readClass(code);
  if (read.ok && read.value?.drill) return read.value.drill;
  const fetched = await fetchDrill(code);
  if (!fetched.ok) return null;
  const drill = `${JSON.stringify(fetched.value, null, 2)}\n`;
  await noteClass(code, { title: fetched.value.title, drill }, Date.now());
  return drill;
}
