import { serve } from '../program.ts';
import { asked, sheet, type Fault } from './fault.ts';

const dayBack = `const now = Date.now; const day = 864e5;
  globalThis.Date = class extends Date {
    constructor(...given) { if (given.length === 0) super(now() - day); else super(...given); }
    static now() { return now() - day; }
  };`;

const clockSetBack: Fault = {
  what: 'the clock is set back by a day',
  wrongIn: async (folder) => {
    const today = await serve(folder);
    await asked(today, 'POST', '/api/studies', sheet('first'));
    await today.kill();
    const preload = `--import=data:text/javascript,${encodeURIComponent(dayBack)}`;
    const yesterday = await serve(folder, { environment: { NODE_OPTIONS: preload } });
    try {
      await asked(yesterday, 'POST', '/api/studies', sheet('second'));
      const home = JSON.stringify((await asked(yesterday, 'GET', '/api/home')).said);
      const listed = JSON.stringify((await asked(yesterday, 'GET', '/api/studies')).said);
      const [created = ''] =
        /"createdAt":"[^"]+"/.exec(listed.slice(listed.indexOf('"second"'))) ?? [];
      const isBefore = (at: string): boolean => listed.indexOf('"second"') < listed.indexOf(at);
      return [
        ...(home.includes('"second"') ? [] : ['the older sheet comes up']),
        ...(isBefore('"first"') ? [] : ['the older sheet is listed first']),
        ...(created === '' || created < `"createdAt":"${new Date().toISOString().slice(0, 10)}`
          ? []
          : ['the clock was not set back']),
      ];
    } finally {
      await yesterday.kill();
    }
  },
};

/** Clocks that are wrong. */
export const oddTimes: readonly Fault[] = [clockSetBack];
