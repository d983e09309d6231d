import fastify from 'fastify';
import { describe, expect, it } from 'vitest';
import { done } from '../core/problem.ts';
import { FileAnswer } from '../served/fileAnswer.ts';
import { api } from '../wire/api.ts';
import { on } from './on.ts';

describe('a text that is sent while it is made', () => {
  it('gives everybody else a turn, and comes whole', async () => {
    let turns = 0;
    let isOver = false;
    const take = (): void => {
      turns += 1;
      if (!isOver) setImmediate(take);
    };
    let within = 0;
    const pieces = (function* () {
      const atFirst = turns;
      for (let i = 0; i < 1000; i += 1) yield `${String(i).padStart(999)}\n`;
      within = turns - atFirst;
    })();
    const app = fastify();
    on(app, api.exportCellTable, () =>
      Promise.resolve(
        done(new FileAnswer({ contentType: 'text/csv', body: { pieces }, name: 'all.csv' })),
      ),
    );
    setImmediate(take);
    const reply = await app.inject(api.exportCellTable.path);
    isOver = true;
    expect(reply.headers['content-disposition']).toBe('attachment; filename="all.csv"');
    expect(reply.payload.split('\n').map((line) => line.trim())).toEqual([
      ...Array.from({ length: 1000 }, (_, i) => String(i)),
      '',
    ]);
    // A megabyte, 64 kB at once.
    expect(within).toBeGreaterThanOrEqual(10);
    await app.close();
  });
});
