import { hostname, networkInterfaces } from 'node:os';

/** This computer's addresses in the networks that it is part of (IPv4), without the loopback. */
export const ownAddresses = (): readonly string[] =>
  Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address);

/** Whether a name or address is this computer's own, as others in its network call it. */
export const isOwnName = (name: string): boolean => {
  const own = hostname().toLowerCase();
  return [own, `${own}.local`, ...ownAddresses()].includes(name.toLowerCase());
};
