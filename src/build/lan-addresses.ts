import { type NetworkInterfaceInfo, networkInterfaces } from 'node:os'

export interface LanAddress {
  /** IPv4. */
  address: string
  /** The system's name of the network, such as 'wlan0'. */
  network: string
}

/** Networks of virtual machines and containers, which a phone cannot reach. */
const VIRTUAL = /^(docker|br-|veth|virbr|vmnet|vEthernet|utun|tun|tap|tailscale|zt)/

/** Addresses at which a phone may find this computer, the likeliest first. */
export function lanAddresses(
  interfaces: NodeJS.Dict<NetworkInterfaceInfo[]> = networkInterfaces(),
): LanAddress[] {
  return Object.entries(interfaces)
    .flatMap(([network, infos]) => (infos ?? []).map((info) => ({ network, ...info })))
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address, network }) => ({ address, network }))
    .sort((one, other) => unlikeliness(one) - unlikeliness(other))
}

function unlikeliness({ address, network }: LanAddress): number {
  if (VIRTUAL.test(network)) return 3
  // RFC 1918 ranges in the order of their use at home, then link-local and public ones.
  const ranges = [/^192\.168\./, /^10\./, /^172\.(1[6-9]|2\d|3[01])\./]
  const range = ranges.findIndex((pattern) => pattern.test(address))
  return range === -1 ? 2 : range / ranges.length
}
