import { cornerPowerPct } from '../machine/setting.ts';
import { airKey } from '../machine/air.ts';
import { settingKey, type Setting } from '../machine/setting.ts';
import type { Card } from './card.ts';
import { cardDrawing, type DrawnLayer } from './cardDrawing.ts';

/** The figures of a setting, in the order in which they are typed. */
export const typedFigures = ['speedMmPerS', 'powerPct', 'minPowerPct', 'passes', 'air'] as const;
export type TypedFigure = (typeof typedFigures)[number];

/** One entry of the control program: all layers of one colour. */
export interface TypeInEntry {
  /** `marks`, a rung's letter, `window` (with the outline). */
  readonly label: string;
  readonly colour: string;
  readonly kind: DrawnLayer['kind'];
  readonly setting?: Setting;
  /** True where the card before had this setting under this label: nothing to type. */
  readonly unchanged: boolean;
}

export interface TypeInGroup {
  /** What all rungs of the group have in common beyond what the whole card has. */
  readonly same: readonly TypedFigure[];
  readonly entries: readonly TypeInEntry[];
}

export interface TypeInList {
  /** Equal in every rung: typed once and copied. */
  readonly same: readonly TypedFigure[];
  /** What differs from rung to rung. */
  readonly varies: readonly TypedFigure[];
  /** The rungs, those of one power together where power varies. */
  readonly groups: readonly TypeInGroup[];
  /** Marks before, window and outline after. */
  readonly before: readonly TypeInEntry[];
  readonly after: readonly TypeInEntry[];
  /** Rungs that are to be typed; those unchanged since the card before are free. */
  readonly toType: number;
}

/** What is typed for a card, grouped by what changes, and by what changed since the card before on the same machine. */
export const typeInList = (card: Card, before?: Card): TypeInList => {
  const known = new Map(
    before === undefined ? [] : entriesOf(before).map(({ label, setting }) => [label, setting]),
  );
  const entries = entriesOf(card, known);
  const rungs = entries.filter(({ kind }) => kind === 'rung');
  const same = sameIn(rungs);
  const varies = typedFigures.filter((figure) => !same.includes(figure));
  return {
    same,
    varies,
    groups: groupsOf(rungs, same),
    before: entries.filter(({ kind }) => kind === 'marks'),
    after: entries.filter(({ kind }) => kind === 'window' || kind === 'outline'),
    toType: rungs.filter((entry) => !entry.unchanged).length,
  };
};

/** One entry a colour: the window and the outline are typed together. */
export const entriesOf = (
  card: Card,
  known: ReadonlyMap<string, Setting | undefined> = new Map(),
): readonly TypeInEntry[] => {
  const layers = cardDrawing(card).layers;
  return layers
    .filter((layer, i) => layers.findIndex(({ colour }) => colour === layer.colour) === i)
    .map(({ kind, rung, colour, setting }) => {
      const label = rung ?? kind;
      const was = known.get(label);
      return {
        label,
        colour,
        kind,
        ...(setting === undefined ? {} : { setting }),
        unchanged:
          setting !== undefined && was !== undefined && settingKey(was) === settingKey(setting),
      };
    });
};

const groupsOf = (
  rungs: readonly TypeInEntry[],
  same: readonly TypedFigure[],
): readonly TypeInGroup[] => {
  const by = (['passes', 'powerPct'] as const).find((figure) => {
    const kinds = new Set(rungs.map((entry) => entry.setting?.[figure]));
    return !same.includes(figure) && kinds.size < rungs.length;
  });
  if (by === undefined) return [{ same: [], entries: rungs }];
  const values = [...new Set(rungs.map((entry) => entry.setting?.[by] ?? 0))].sort((a, b) => a - b);
  return values.map((value) => {
    const entries = rungs.filter((entry) => entry.setting?.[by] === value);
    return { same: sameIn(entries).filter((figure) => !same.includes(figure)), entries };
  });
};

const sameIn = (entries: readonly TypeInEntry[]): readonly TypedFigure[] =>
  typedFigures.filter(
    (figure) => new Set(entries.map(({ setting }) => figureKey(setting, figure))).size <= 1,
  );

const figureKey = (setting: Setting | undefined, figure: TypedFigure): string => {
  if (setting === undefined) return '';
  if (figure === 'air') return airKey(setting.air);
  if (figure === 'minPowerPct') return String(cornerPowerPct(setting));
  return String(setting[figure]);
};
