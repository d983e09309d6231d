import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** The key that signs a phone's pairing, kept beside the data and readable by its owner alone; made where there is none. */
export const pairingKey = (folder: string): Uint8Array => {
  const file = join(folder, 'pairing.key');
  if (existsSync(file)) {
    const kept = readFileSync(file);
    if (kept.length === 32) return kept;
  }
  const key = randomBytes(32);
  writeFileSync(file, key, { mode: 0o600 });
  return key;
};
