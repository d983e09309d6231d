import { describe, expect, it } from 'vitest';
import { testServer } from '../../test/samples/server.ts';
import type { BackupsStand } from '../app/ports/backups.ts';
import { problemOf } from '../core/problem.ts';
import { api } from '../wire/api.ts';

const at = '2031-05-06T07:00:00.000Z';

describe('how the backups stand', () => {
  it('is told, with words where they fail; open pages hear of it', async () => {
    const listeners = new Set<(stand: BackupsStand) => void>();
    let stand: BackupsStand = { lastAt: at };
    const server = await testServer({
      backups: {
        stand: () => stand,
        hear: (listener) => {
          listeners.add(listener);
          return () => void listeners.delete(listener);
        },
      },
    });
    try {
      expect(await server.ask(api.backups)).toEqual({ isOn: true, lastAt: at });
      const problem = problemOf('backup-folder-not-there', { folder: '/media/stick' });
      stand = { lastAt: at, failing: { since: at, problem } };
      const base = await server.app.listen({ host: '127.0.0.1', port: 0 });
      const live = await fetch(`${base}/api/live`);
      const reader = live.body?.pipeThrough(new TextDecoderStream()).getReader();
      for (const listener of listeners) listener(stand);
      let heard = '';
      while (!heard.includes('data: {}')) heard += (await reader?.read())?.value ?? '';
      const { failing } = await server.ask(api.backups);
      expect(failing?.said).toMatchObject({ code: 'backup-folder-not-there' });
      expect(failing?.said.message).toContain('/media/stick');
    } finally {
      await server.close();
    }
    expect(listeners.size).toBe(0);
  });

  it('is that none are made, where none were asked for', async () => {
    const server = await testServer();
    expect(await server.ask(api.backups)).toEqual({ isOn: false });
    await server.close();
  });
});
