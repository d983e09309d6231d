import { machinesText, watchText as words } from '../../../words/texts.ts';
import '../../parts/drawn/drawn.css';
import type { Watched } from './useWatch.ts';

const frame = { width: 640, height: 330, left: 18, right: 18, top: 16, bottom: 52 } as const;
/** Scores beyond this stand at the edge. */
const most = { up: 2.6, down: 4.2 } as const;
/** Older ones are in the list below. */
const mostShown = 40;

type Point = Watched['points'][number];

/** Counts from left to right, oldest first; up is better than foreseen, down is worse. */
export const WatchPicture = ({ watched }: { readonly watched: Watched }) => {
  const points = watched.points.slice(-mostShown);
  const changes = changesShown(watched);
  const inner = frame.width - frame.left - frame.right;
  const x = (i: number): number => frame.left + ((i + 0.5) / Math.max(6, points.length)) * inner;
  const y = (score: number): number =>
    frame.top +
    ((most.up - Math.max(-most.down, Math.min(most.up, score))) / (most.up + most.down)) *
      (frame.height - frame.top - frame.bottom);
  const across = (score: number): string =>
    `M${String(frame.left)} ${y(score).toFixed(1)}H${String(frame.width - frame.right)}`;
  const limit = -watched.limits.average;
  const line = points.map(({ average }, i) => `${x(i).toFixed(1)} ${y(average).toFixed(1)}`);
  const [first, last] = [points[0], points.at(-1)];
  const alarms = points.filter(({ alarm }) => alarm).length;
  return (
    <svg
      className="drawn"
      viewBox={`0 0 ${String(frame.width)} ${String(frame.height)}`}
      role="img"
      aria-label={words.picture(
        points.length,
        alarms,
        changes.map(({ whole }) => whole),
      )}
    >
      <path className="watch-middle" d={across(0)} />
      <path className="drawn-limit" d={across(limit)} />
      <Words x={frame.width - frame.right - 6} y={y(most.up) + 20} end text={words.better} />
      <Words x={frame.width - frame.right - 6} y={y(0) - 8} end text={words.foreseen} />
      <Words x={frame.width - frame.right - 6} y={y(limit) + 24} end text={words.alarmBelow} />
      {changes.map((change, i) => (
        <Change
          key={change.whole}
          change={change}
          x={x(change.place - 0.5)}
          y={y(-most.down) - (i % 2 === 0 ? 10 : 38)}
        />
      ))}
      {/* One count has no way behind it: the line is then a dash through where it stands. */}
      <path
        className="drawn-line"
        d={`M${line.length === 1 ? line.map((at) => `${at}m-14 0h28`).join('') : line.join('L')}`}
      />
      {points.map((point, i) => (
        <Mark key={point.id} point={point} x={x(i)} y={y(point.score)} />
      ))}
      {first === undefined ? null : (
        <Words x={frame.left} y={frame.height - 14} text={day(first.at)} />
      )}
      {last === undefined || last === first ? null : (
        <Words x={frame.width - frame.right} y={frame.height - 14} end text={day(last.at)} />
      )}
    </svg>
  );
};

interface ChangeShown {
  /** Among the counts that are shown; as many as there are: behind the last. */
  readonly place: number;
  /** As it stands beside its line. */
  readonly name: string;
  readonly whole: string;
}

/** Where another batch was cut from, and where something was changed on the machine, as far as the counts are shown. */
const changesShown = ({
  points,
  batchChanges,
  machineChanges,
}: Watched): readonly ChangeShown[] => {
  const hidden = Math.max(0, points.length - mostShown);
  const batches = batchChanges.map(({ atPoint, to }) => ({
    place: atPoint - hidden,
    name: to,
    whole: words.batchFrom(to, day(points[atPoint]?.at ?? '')),
  }));
  const ofMachine = machineChanges.map(({ atPoint, at, what }) => ({
    place: atPoint - hidden,
    name: machinesText.changes[what],
    whole: words.machineFrom(machinesText.changes[what], day(at)),
  }));
  return [...batches, ...ofMachine].filter(({ place }) => place >= 0);
};

/** A longer name is whole in the key. */
const mostLetters = 12;

/** A thin line before the first count in another batch, and its name. */
const Change = ({
  change,
  x,
  y,
}: {
  readonly change: ChangeShown;
  readonly x: number;
  readonly y: number;
}) => {
  const isRight = x > 0.66 * frame.width;
  const name =
    change.name.length > mostLetters ? `${change.name.slice(0, mostLetters - 1)}…` : change.name;
  return (
    <g>
      <title>{change.whole}</title>
      <path
        className="watch-batch"
        d={`M${x.toFixed(1)} ${String(frame.top)}V${String(frame.height - frame.bottom)}`}
      />
      <Words x={x + (isRight ? -6 : 6)} y={y} end={isRight} text={name} />
    </g>
  );
};

const day = (at: string): string => new Date(at).toLocaleDateString();

interface WordsProps {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly end?: boolean;
}

const Words = ({ x, y, text, end = false }: WordsProps) => (
  <text className="drawn-word" x={x} y={y} textAnchor={end ? 'end' : 'start'}>
    {text}
  </text>
);

/** An order is round, the rounder the more parts; a strip is a square on its tip; an alarm is filled and crossed. */
const Mark = ({
  point,
  x,
  y,
}: {
  readonly point: Point;
  readonly x: number;
  readonly y: number;
}) => {
  const r = point.kind === 'strip' ? 9 : Math.min(14, 5 + 1.6 * Math.log10(point.parts) ** 1.6);
  const name = point.alarm ? 'drawn-mark watch-alarm' : 'drawn-mark';
  return (
    <g>
      {point.kind === 'strip' ? (
        <path
          className={name}
          d={`M${String(x)} ${String(y - r)}l${String(r)} ${String(r)}l${String(-r)} ${String(r)}l${String(-r)} ${String(-r)}z`}
        />
      ) : (
        <circle className={name} cx={x} cy={y} r={r} />
      )}
      {point.alarm ? (
        <path className="watch-cross" d={`M${String(x - 4)} ${String(y - 4)}l8 8m0 -8l-8 8`} />
      ) : null}
    </g>
  );
};

/** What the marks mean, in words, under the picture. */
export const WatchKey = ({ watched }: { readonly watched: Watched }) => (
  <ul className="watch-key">
    <li>
      <KeyMark>
        <circle className="drawn-mark" cx="12" cy="12" r="8" />
      </KeyMark>
      {words.key.order}
    </li>
    {watched.points.some(({ kind }) => kind === 'strip') ? (
      <li>
        <KeyMark>
          <path className="drawn-mark" d="M12 3l9 9l-9 9l-9 -9z" />
        </KeyMark>
        {words.key.strip}
      </li>
    ) : null}
    <li>
      <KeyMark>
        <path className="drawn-line" d="M2 15L10 9L22 13" />
      </KeyMark>
      {words.key.line}
    </li>
    {changesShown(watched).map((change) => (
      <li key={change.whole}>
        <KeyMark>
          <path className="watch-batch" d="M12 2V22" />
        </KeyMark>
        {change.whole}
      </li>
    ))}
    {watched.points.some(({ alarm }) => alarm) ? (
      <li>
        <KeyMark>
          <circle className="drawn-mark watch-alarm" cx="12" cy="12" r="9" />
          <path className="watch-cross" d="M8 8l8 8m0 -8l-8 8" />
        </KeyMark>
        {words.key.alarm}
      </li>
    ) : null}
  </ul>
);

const KeyMark = ({ children }: { readonly children: React.ReactNode }) => (
  <svg className="watch-key-mark" viewBox="0 0 24 24" aria-hidden="true">
    {children}
  </svg>
);
