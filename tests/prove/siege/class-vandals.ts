// Part 9: a player who disturbs a class. The teacher removes the player for good and closes joining; the others stay.
import { classPath, roomPath, ticketPath } from '../../../shared-engine/protocol/paths.ts';
import { act, dashboardOf, joinAll, joinClass, openClass } from '../../kit/class-room.ts';
import { dealOf, drillOf } from '../../kit/drills.ts';
import { post, sitDown } from '../../kit/http-client.ts';
import { seedNamed } from '../../kit/rounds.ts';
import { type Attack, findingsOf } from './siege.ts';

const tell = findingsOf('9 class vandals');

export const classVandals: Attack = async ({ server, seed }) => {
  const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed(seed) }, { id: 'one' })]);
  const teacher = await openClass(server, { ...drill, form: 'tables' });
  const { players, peers } = await joinAll(server, teacher.code, ['Ines', 'Vandal', 'Wilma']);
  const [ines, vandal] = [players[0]!, players[1]!];
  await act(server, teacher, { kind: 'remove', player: 1 });
  await peers[1]!.ended;
  const joining = `${server.url}${classPath(teacher.code, 'players')}`;
  const headers = { authorization: `Bearer ${vandal.secret}` };
  const aims = { step: 'vote', sections: [] };
  const attempts = [
    await post(joining, { name: 'Odo' }, vandal.classSecret),
    await post(`${server.url}${ticketPath(vandal.code)}`, {}, vandal.secret),
    await fetch(`${server.url}${roomPath(vandal.code)}`, { headers }),
    await post(`${server.url}${classPath(teacher.code, 'aims')}`, aims, vandal.classSecret),
  ].map(({ status }) => status);
  const heir = await joinClass(server, teacher.code, 'Odo');
  await act(server, teacher, { kind: 'joining', open: false });
  const late = await post(joining, { name: 'Vandal again' });
  const { code } = await late.json();
  const back = await sitDown(server, ines);
  const names = (await dashboardOf(server, teacher)).players.map(({ name }) => name);
  for (const peer of [...peers, back]) peer.socket.terminate();
  return [
    tell(
      'joining, coming back, looking and answering with the secrets of a removed player',
      '403 or 404 each',
      attempts,
      attempts.every((status) => status === 403 || status === 404),
    ),
    tell(
      'the place of the removed player',
      'free for the next one',
      `given to ${heir.name}`,
      heir.code === vandal.code && heir.seat === vandal.seat,
    ),
    tell('joining once it is closed', 'joining-closed', code, code === 'joining-closed'),
    tell('who is in the class', 'Ines, Wilma, Odo', names.join(', '), names.join() === 'Ines,Wilma,Odo'),
    tell('a player who was in comes back', 'at seat 0', `at seat ${back.table.you}`, back.table.you === 0),
  ];
};
