// What counts as one address for the limits: an IPv4 address, or the /64 network that one IPv6 subscriber is given.
import { isIPv6 } from 'node:net';

/** The groups of a /64 prefix, of eight groups of 16 bits. */
const PREFIX_GROUPS = 4;

export function addressKey(ip: string | undefined): string {
  // A scope ("%eth0") names an interface of this machine, not the other side.
  const address = (ip ?? 'unknown').split('%')[0]!;
  if (!isIPv6(address)) return address;
  const mapped = /^::ffff:(.+)$/i.exec(address)?.[1];
  return mapped ?? `${groupsOf(address).slice(0, PREFIX_GROUPS).join(':')}::/64`;
}

/** All eight groups, the ones that `::` stands for written out; an IPv4 tail counts as two. */
function groupsOf(address: string): string[] {
  const [head = '', tail] = address.split('::');
  const groups = (part: string) => part.split(':').filter((group) => group !== '');
  const [left, right] = [groups(head), groups(tail ?? '')];
  const tailWidth = right.length + (right.at(-1)?.includes('.') ? 1 : 0);
  const gap = tail === undefined ? 0 : 8 - left.length - tailWidth;
  const zeros = Array.from({ length: gap }, () => '0');
  return [...left, ...zeros, ...right].map((group) => (group.includes('.') ? group : plainGroup(group)));
}

function plainGroup(group: string): string {
  return Number.parseInt(group, 16).toString(16);
}
