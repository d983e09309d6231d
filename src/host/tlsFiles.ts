import { createPrivateKey, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { done, refused, type Outcome } from '../core/problem.ts';
import { fromWhereCalled } from './paths.ts';

type Environment = Readonly<Record<string, string | undefined>>;

/** A certificate with its key, and the names that it is for. */
export interface Tls {
  readonly cert: string;
  readonly key: string;
  /** Names and addresses in full, without those of this computer to itself. */
  readonly names: readonly string[];
  readonly isFor: (hostname: string) => boolean;
}

/**
 * The certificate that THROUGHCUT_TLS_CERT names, and its key by THROUGHCUT_TLS_KEY, both as PEM. Undefined: neither is set.
 * Refuses: `tls-half-said`, `tls-not-usable`.
 */
export const tlsFiles = (environment: Environment = process.env): Outcome<Tls | undefined> => {
  const [certFile = '', keyFile = ''] = ['THROUGHCUT_TLS_CERT', 'THROUGHCUT_TLS_KEY'].map(
    (name) => environment[name]?.trim() ?? '',
  );
  if (certFile === '' && keyFile === '') return done(undefined);
  if (certFile === '' || keyFile === '') return refused('tls-half-said');
  let file = fromWhereCalled(certFile, environment);
  try {
    const cert = readFileSync(file, 'utf8');
    const read = new X509Certificate(cert);
    file = fromWhereCalled(keyFile, environment);
    const key = readFileSync(file, 'utf8');
    if (!read.checkPrivateKey(createPrivateKey(key)))
      return refused('tls-not-usable', { file, detail: 'it is not the key of the certificate' });
    return done({
      cert,
      key,
      names: namesIn(read),
      isFor: (name) => {
        const bare = name.replace(/^\[|\]$/g, '');
        return (isIP(bare) === 0 ? read.checkHost(bare) : read.checkIP(bare)) !== undefined;
      },
    });
  } catch (thrown) {
    const detail = thrown instanceof Error ? thrown.message : 'no reason given';
    return refused('tls-not-usable', { file, detail });
  }
};

/** As Node prints them: `DNS:bench.example, IP Address:192.168.7.2`. */
const namesIn = ({ subjectAltName = '' }: X509Certificate): readonly string[] =>
  [...subjectAltName.matchAll(/(?:DNS|IP Address):([^,\s]+)/g)]
    .map(([, name = '']) => name)
    .filter((name) => !name.includes('*') && !['localhost', '127.0.0.1', '::1'].includes(name));
