import { resolve } from 'node:path';

/**
 * A path as the person meant it who typed it: relative to where they called from. npm changes into the project's folder
 * and leaves the caller's in INIT_CWD.
 */
export const fromWhereCalled = (
  path: string,
  environment: Readonly<Record<string, string | undefined>> = process.env,
): string => resolve(environment['INIT_CWD'] ?? process.cwd(), path);
