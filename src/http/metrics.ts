import { monitorEventLoopDelay } from 'node:perf_hooks';
import type { BackupsSeen } from '../app/ports/backups.ts';

/** What a request came to, without who asked or of what. */
export interface ServedRequest {
  readonly method: string;
  /** As it is written in the code, such as `/api/studies/:id`; empty where there is none. */
  readonly route: string;
  readonly status: number;
  readonly tookMs: number;
}

/** What is counted while the server runs. */
export interface Metrics {
  readonly note: (request: ServedRequest) => void;
  readonly streams: (change: 1 | -1) => void;
  /** All of it as OpenMetrics text. */
  readonly text: () => string;
  readonly close: () => void;
}

/** As the specification has it: OpenMetrics 1.0, "Content-Type". */
export const metricsContentType = 'application/openmetrics-text; version=1.0.0; charset=utf-8';

/** Upper bounds of how long answers take, in seconds. */
const bounds = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10] as const;

interface Sample {
  readonly end?: string;
  readonly labels?: Readonly<Record<string, string>>;
  readonly value: number;
}

/** One family as OpenMetrics 1.0 writes it (4.2, overall structure): what it is, its unit, then its samples. */
const family = (
  name: string,
  { type, help, unit }: { readonly type: string; readonly help: string; readonly unit?: string },
  samples: readonly Sample[],
): string =>
  [
    `# TYPE ${name} ${type}`,
    ...(unit === undefined ? [] : [`# UNIT ${name} ${unit}`]),
    `# HELP ${name} ${help}`,
    ...samples.map(
      ({ end = '', labels = {}, value }) => `${name}${end}${labelled(labels)} ${String(value)}`,
    ),
  ].join('\n');

const labelled = (labels: Readonly<Record<string, string>>): string => {
  const all = Object.entries(labels).map(([name, value]) => `${name}="${escaped(value)}"`);
  return all.length === 0 ? '' : `{${all.join(',')}}`;
};

const escaped = (value: string): string =>
  value.replace(/[\\"\n]/g, (sign) => (sign === '\n' ? '\\n' : `\\${sign}`));

/** Counts what is served. `version` names the program. */
export const openMetrics = (version: string, backups: BackupsSeen | undefined): Metrics => {
  const requests = new Map<string, { readonly labels: Sample['labels']; count: number }>();
  const within = bounds.map(() => 0);
  let [count, seconds, streams] = [0, 0, 0];
  const startedAt = Date.now() / 1000 - process.uptime();
  const lag = monitorEventLoopDelay({ resolution: 20 });
  lag.enable();

  const note: Metrics['note'] = ({ method, route, status, tookMs }) => {
    const labels = { method, route, status: String(status) };
    const key = JSON.stringify(labels);
    const known = requests.get(key) ?? { labels, count: 0 };
    known.count += 1;
    requests.set(key, known);
    count += 1;
    seconds += tookMs / 1000;
    bounds.forEach((bound, i) => {
      if (tookMs / 1000 <= bound) within[i] = (within[i] ?? 0) + 1;
    });
  };

  const ofBackups = (): readonly string[] => {
    if (backups === undefined) return [];
    const { lastAt, failing } = backups.stand();
    return [
      family(
        'throughcut_backup_failing',
        { type: 'gauge', help: '1 while backups on a schedule are not made.' },
        [{ value: failing === undefined ? 0 : 1 }],
      ),
      ...(lastAt === undefined
        ? []
        : [
            family(
              'throughcut_backup_last_seconds',
              {
                type: 'gauge',
                unit: 'seconds',
                help: 'When the newest backup was made (Unix time).',
              },
              [{ value: Date.parse(lastAt) / 1000 }],
            ),
          ]),
    ];
  };

  return {
    note,
    streams: (change) => void (streams += change),
    close: () => lag.disable(),
    text: () =>
      [
        family('throughcut_build', { type: 'info', help: 'The program.' }, [
          { end: '_info', labels: { version }, value: 1 },
        ]),
        family(
          'throughcut_requests',
          { type: 'counter', help: 'Requests that were answered.' },
          [...requests.values()].map(({ labels = {}, count: value }) => ({
            end: '_total',
            labels,
            value,
          })),
        ),
        family(
          'throughcut_request_seconds',
          { type: 'histogram', unit: 'seconds', help: 'How long answers took.' },
          [
            ...bounds.map((bound, i) => ({
              end: '_bucket',
              labels: { le: String(bound) },
              value: within[i] ?? 0,
            })),
            { end: '_bucket', labels: { le: '+Inf' }, value: count },
            { end: '_count', value: count },
            { end: '_sum', value: seconds },
          ],
        ),
        family(
          'throughcut_live_streams',
          { type: 'gauge', help: 'Pages that listen for changes.' },
          [{ value: streams }],
        ),
        ...ofBackups(),
        family(
          'process_resident_memory_bytes',
          { type: 'gauge', unit: 'bytes', help: 'Memory of the process.' },
          [{ value: process.memoryUsage.rss() }],
        ),
        family(
          'process_cpu_seconds',
          { type: 'counter', unit: 'seconds', help: 'Processor time of the process.' },
          [{ end: '_total', value: cpuSeconds() }],
        ),
        family(
          'process_start_time_seconds',
          { type: 'gauge', unit: 'seconds', help: 'When the process started (Unix time).' },
          [{ value: startedAt }],
        ),
        family(
          'throughcut_event_loop_delay_p99_seconds',
          {
            type: 'gauge',
            unit: 'seconds',
            help: 'How late timers were, the 99th of 100, since the start.',
          },
          [{ value: lag.percentile(99) / 1e9 }],
        ),
        '# EOF\n',
      ].join('\n'),
  };
};

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
