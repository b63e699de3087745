// What each kind of fault does to the simulated world while it lasts.
import type { Random } from '../../shared-engine/rules/deal/random.ts';
import type { Fault } from './faults.ts';
import type { World } from './world.ts';

export const FAULT_EFFECTS: Readonly<Record<Fault['kind'], (world: World, fault: Fault) => void>> = {
  'connection cut': (world) => pick(connectionsOf(world), world.random)?.cut(),
  'silent connection': (world) => pick(connectionsOf(world), world.random)?.goSilent(),
  reload: (world) => pick(world.players, world.random)?.reconnect(),
  kill(world, { ms, server }) {
    world.machines[server]!.kill();
    world.time.after(ms, () => {
      world.machines[server] = world.start();
    });
  },
  freeze: (world, { ms, server }) => world.machines[server]!.clock.freeze(ms),
  'disk unavailable': during(({ disk }, on) => {
    disk.unavailable = on;
  }),
  'disk full': during(({ disk }, on) => {
    disk.full = on;
  }),
  'disk answers lost': during(({ disk }, on) => {
    disk.lostAnswersPercent = on ? 30 : 0;
  }),
  'disk slow': during(({ disk }, on) => {
    disk.maxDelayMs = on ? 400 : 3;
  }),
  'wake-ups lost': during(({ network }, on) => {
    network.lostWakesPercent = on ? 100 : 0;
  }),
  'frames twice': during(({ network }, on) => {
    network.duplicatePercent = on ? 50 : 0;
  }),
  'slow network': during(({ network }, on) => {
    network.maxDelayMs = on ? 900 : 8;
  }),
};

function during(set: (world: World, on: boolean) => void) {
  return (world: World, { ms }: Fault): void => {
    set(world, true);
    world.time.after(ms, () => set(world, false));
  };
}

function connectionsOf({ machines }: World) {
  return machines.flatMap(({ connections }) => [...connections]);
}

function pick<T>(list: readonly T[], random: Random): T | undefined {
  return list.length === 0 ? undefined : list[random.below(list.length)];
}
