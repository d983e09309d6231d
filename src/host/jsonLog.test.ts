import { describe, expect, it } from 'vitest';
import { problemOf } from '../core/problem.ts';
import { StoreError } from '../store/storeError.ts';
import { jsonLog } from './jsonLog.ts';

const written = () => {
  const lines: string[] = [];
  return { lines, log: jsonLog((line) => lines.push(line)) };
};

describe('the log', () => {
  it('is one line of JSON an event, with level and time in words', () => {
    const { lines, log } = written();
    log.event({
      what: 'request',
      method: 'GET',
      route: '/api/studies/:id',
      status: 404,
      tookMs: 3,
    });
    log.event({ what: 'request', method: 'GET', route: '', status: 500, tookMs: 3 });
    log.event({ what: 'pairing-paused' });
    expect(lines.every((line) => line.endsWith('\n') && line.trim().split('\n').length === 1)).toBe(
      true,
    );
    const read = lines.map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(read.map(({ level }) => level)).toEqual(['info', 'error', 'warn']);
    expect(read[0]).toMatchObject({
      program: 'throughcut',
      what: 'request',
      route: '/api/studies/:id',
      status: 404,
    });
    expect(String(read[0]?.['time'])).toMatch(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/);
  });

  it('says where something broke and not what it said', () => {
    const { lines, log } = written();
    const secret = 'birch plywood of somebody\n    second line';
    log.event({ what: 'broke', error: new Error(secret) });
    log.event({ what: 'broke', error: new StoreError(problemOf('store-busy', { file: secret })) });
    log.event({ what: 'broke', error: secret });
    expect(lines.join('')).not.toContain('somebody');
    expect(lines.join('')).not.toContain('second line');
    expect(JSON.parse(lines[0] ?? '')).toMatchObject({ level: 'error', error: { name: 'Error' } });
    expect(lines[0]).toContain('jsonLog.test.ts');
    expect(lines[1]).toContain('store-busy');
  });
});
