import { join } from 'node:path';
import { done, refused, type Outcome } from '../core/problem.ts';
import { rememberingKept } from '../host/rememberingKept.ts';
import { systemClock } from '../host/clock.ts';
import { dataFolder } from '../host/dataFolder.ts';
import { foundAtPlace, type FoundAtPlace } from '../host/foundAtPlace.ts';
import { sharpPictures } from '../host/pictures.ts';
import { randomIds } from '../host/ids.ts';
import { serverModel } from '../host/systemModel.ts';
import { isOwnName, ownAddresses } from '../host/network.ts';
import { storePlace } from '../host/storePlace.ts';
import { tlsFiles, type Tls } from '../host/tlsFiles.ts';
import { takeInPhonesFile } from '../host/takeInPhonesFile.ts';
import { codeMinutes, openPairing } from '../http/pairing.ts';
import type { Lan } from '../http/phones.ts';
import { buildServer } from '../http/server.ts';
import type { OpenedStore } from '../store/kyselyStore.ts';
import { StoreError } from '../store/storeError.ts';
import { openStore, placeInWords } from '../store/openStore.ts';
import { terminalText } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import type { BackupPlan } from '../store/backups/backupPlan.ts';
import { backupPlan } from './backupPlan.ts';
import { printer } from './printer.ts';
import { tell, type ExitCode } from './output.ts';
import { startBackups } from './startBackups.ts';
import { openVoice, type Voice } from './voice.ts';
import { projectFolder, version } from './version.ts';

const usualPort = 4870;

export interface ServeOptions {
  /** Lets phones in the same network in, each by a pairing code. */
  readonly lan?: boolean;
}

/**
 * `serve`: the workshop's page and its API on this computer, with `--lan` for phones too, until it is told to stop
 * (Ctrl-C, or SIGTERM). Stays in the foreground.
 */
export const runServe = async (options: ServeOptions): Promise<ExitCode> => {
  const voice = openVoice();
  if (!voice.ok) return complain(voice);
  const say = voice.value;
  const tls = tlsFiles();
  if (!tls.ok) return complain(tls);
  const port = askedPort(process.env['THROUGHCUT_PORT']);
  if (!port.ok) return complain(port);
  const plan = backupPlan();
  if (!plan.ok) return complain(plan);
  const folder = dataFolder();
  const found = foundAtPlace(storePlace());
  const opened = await openOwn();
  if (!opened.ok) return complain(opened);
  const store = opened.value;
  const backups =
    plan.value === undefined ? undefined : startBackups(storePlace(), plan.value, say);
  const lan =
    options.lan === true
      ? await openLan({ folder, port: port.value, store, tls: tls.value, say })
      : undefined;
  const sums = serverModel();
  const app = await buildServer({
    ports: { store, clock: systemClock, ids: randomIds },
    modelFor: rememberingKept(sums.modelFor),
    version: version(),
    pageFolder: join(projectFolder(), 'build', 'web'),
    printer,
    pictures: sharpPictures,
    ...(lan === undefined ? {} : { lan }),
    ...(backups === undefined ? {} : { backups }),
    ...(tls.value === undefined ? {} : { tls: tls.value }),
    metricsToken: process.env['THROUGHCUT_METRICS_TOKEN']?.trim() ?? '',
    answered: say.answered,
    report: say.broke,
  });
  const stop = stopSignal();
  try {
    const host = lan === undefined ? '127.0.0.1' : '0.0.0.0';
    const listening = await listen(() => app.listen({ host, port: port.value }), port.value);
    if (!listening.ok) return complain(listening);
    say.started({
      greeting: await greeting({ port: port.value, lan, plan: plan.value, tls: tls.value, found }),
      port: port.value,
      store: storePlace().kind,
      found,
    });
    await stop;
    say.stopping();
    return 0;
  } finally {
    // First: what is being worked out is not waited for.
    await sums.close();
    await backups?.stop();
    await app.close();
    await store.close();
    say.stopped();
  }
};

const openOwn = async (): Promise<Outcome<OpenedStore>> => {
  try {
    return done(await openStore(storePlace(), systemClock.now()));
  } catch (thrown) {
    if (thrown instanceof StoreError) return { ok: false, problem: thrown.problem };
    throw thrown;
  }
};

interface LanOptions {
  readonly folder: string;
  readonly port: number;
  readonly store: OpenedStore;
  readonly tls: Tls | undefined;
  readonly say: Voice;
}

const openLan = async ({ folder, port, store, tls, say }: LanOptions): Promise<Lan> => {
  await takeInPhonesFile(folder, store.phones);
  const at = (name: string): string => `${scheme(tls)}://${name}:${String(port)}`;
  return {
    pairing: openPairing({ kept: store.phones, now: systemClock.now, paused: say.paused }),
    isOwnName: (name) => isOwnName(name) || (tls?.isFor(name) ?? false),
    // Under another name than the certificate's a phone would be warned.
    addresses: () => (tls?.names ?? ownAddresses()).map(at),
  };
};

const scheme = (tls: Tls | undefined): string => (tls === undefined ? 'http' : 'https');

interface Greeting {
  readonly port: number;
  readonly lan: Lan | undefined;
  readonly plan: BackupPlan | undefined;
  readonly tls: Tls | undefined;
  readonly found: FoundAtPlace;
}

const greeting = async ({ port, lan, plan, tls, found }: Greeting): Promise<string> =>
  [
    terminalText.at(`${scheme(tls)}://127.0.0.1:${String(port)}`),
    ...(lan === undefined
      ? []
      : [
          terminalText.phoneAt(lan.addresses()),
          terminalText.phoneCode((await lan.pairing.open()).code, codeMinutes),
          tls === undefined ? terminalText.notEncrypted : terminalText.encrypted,
        ]),
    terminalText.dataIn(placeInWords(storePlace())),
    ...(found === 'kept'
      ? []
      : [terminalText.begun[found], terminalText.lookForBackups(plan?.folder)]),
    ...(plan === undefined ? [] : [terminalText.backupsIn(plan.folder, plan.everyHours)]),
    terminalText.stopIt,
    '',
  ].join('\n');

const askedPort = (text: string | undefined): Outcome<number> => {
  if (text === undefined || text === '') return done(usualPort);
  const port = Number(text);
  const isPort = /^\d+$/.test(text) && port >= 1 && port <= 65_535;
  return isPort ? done(port) : refused('port-not-a-port', { port: text });
};

const listen = async (start: () => Promise<unknown>, port: number): Promise<Outcome<undefined>> => {
  try {
    await start();
    return done(undefined);
  } catch (thrown) {
    const code = thrown instanceof Error && 'code' in thrown ? thrown.code : undefined;
    if (code === 'EADDRINUSE') return refused('port-taken', { port: String(port) });
    if (code === 'EACCES') return refused('port-not-allowed', { port: String(port) });
    throw thrown;
  }
};

/** Resolves at the first request to stop; a second one ends the program at once. */
const stopSignal = (): Promise<void> =>
  new Promise((resolve) => {
    let asked = false;
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      process.on(signal, () => {
        if (asked) process.exit(1);
        asked = true;
        resolve();
      });
    }
  });

const complain = (outcome: Outcome<unknown> & { readonly ok: false }): 2 => {
  const { message, remedy } = problemInWords(outcome.problem);
  tell(`${message} ${remedy}`);
  return 2;
};
