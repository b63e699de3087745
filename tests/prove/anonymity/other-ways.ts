// What else of a class can be fetched or made: with a key, with the code of the big screen, from the report on a device.
import { figuresOf, playersOver, themesOver } from '../../../client/class/library/group-figures.ts';
import { teachNext } from '../../../shared-engine/drill/report/teach-next.ts';
import { teacherKeySchema } from '../../../shared-engine/protocol/class.ts';
import type { DrillReport } from '../../../shared-engine/protocol/class-report.ts';
import { classPath } from '../../../shared-engine/protocol/paths.ts';
import { cookieIn, type Teacher } from '../../kit/class-room.ts';
import { post } from '../../kit/http-client.ts';
import type { TestServer } from '../../kit/server.ts';
import type { Fetched } from './evening.ts';

type Address = Pick<TestServer, 'url'>;

/** Secrets of a dashboard opened with a key and of a big screen opened with its code. */
export interface OtherWays {
  readonly key: string;
  readonly screen: string;
}

export async function openWays({ url }: Address, { code, secret }: Teacher): Promise<OtherWays> {
  const made = async (part: 'keys' | 'screen-codes') =>
    (await post(`${url}${classPath(code, part)}`, {}, secret)).json();
  const { key } = teacherKeySchema.parse(await made('keys'));
  const opened = await post(`${url}${classPath(code, 'screens')}`, await made('screen-codes'));
  return { key, screen: cookieIn(opened, 'screen') };
}

export async function fetchedOtherwise(
  { url }: Address,
  { code, secret }: Teacher,
  { key, screen }: OtherWays,
): Promise<Fetched> {
  const by = async (part: Parameters<typeof classPath>[1], shown: string) =>
    (await fetch(`${url}${classPath(code, part)}`, { headers: { authorization: `Bearer ${shown}` } })).text();
  return {
    drill: await by('drill', secret),
    'dashboard by key': await by('dashboard', key),
    'report by key': await by('report', key),
    'big screen by code': await by('big-screen', screen),
    'class by code': await by('', screen),
  };
}

/** What the page makes of a report: what to teach next, and the classes of a group side by side. */
export function madeOfReport(code: string, report: string, { title, deals }: DrillReport): Fetched {
  const figures = figuresOf({ code, title, group: '', openedAt: 0, drill: null, report });
  const group = figures && [figures, themesOver([figures]), playersOver([figures])];
  return { plan: JSON.stringify(teachNext(deals)), group: JSON.stringify(group) };
}
