import { networkInterfaces } from 'node:os';

/** An IPv4 address of this computer and the network it belongs to. */
export interface OwnAddress {
  readonly address: string;
  readonly network: string;
}

/**
 * The addresses by which a phone may reach this computer, those of private networks (RFC 1918) first. Link-local
 * addresses (RFC 3927) come last: they mean that the network has given none.
 */
export function ownAddresses(interfaces = networkInterfaces()): OwnAddress[] {
  return Object.entries(interfaces)
    .flatMap(([network, addresses]) => (addresses ?? []).map((one) => ({ ...one, network })))
    .filter((one) => one.family === 'IPv4' && !one.internal)
    .map(({ address, network }) => ({ address, network }))
    .toSorted((one, other) => likelihood(one.address) - likelihood(other.address));
}

/** Whether this computer has the address, loopback included: there it can be tried without a network. */
export function isOwnAddress(address: string, interfaces = networkInterfaces()): boolean {
  return Object.values(interfaces).some((own) => own?.some((one) => one.family === 'IPv4' && one.address === address));
}

function likelihood(address: string): number {
  if (/^(?:192\.168|10|172\.(?:1[6-9]|2\d|3[01]))\./.test(address)) return 0;
  return address.startsWith('169.254.') ? 2 : 1;
}
