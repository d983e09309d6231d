import type { Air } from '../../../core/machine/air.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { TypedFigure, TypeInEntry, TypeInList } from '../../../core/card/typeInList.ts';
import { powerWords, speedWords } from '../../../words/en/figures.ts';
import { takeText as words } from '../../../words/en/screens/machine.ts';

/** What is typed, one line a letter, in the order of cutting; what is alike in all stands above, once. */
export const TypeInTable = ({ list }: { readonly list: TypeInList }) => {
  const first = list.groups[0]?.entries[0];
  const varies = list.varies.length === 0 ? (['speedMmPerS'] as const) : list.varies;
  const same = list.same.filter((figure) => figure !== 'minPowerPct' || hasCorners(first?.setting));
  return (
    <div className="stack">
      <p>{words.toType(list.toType)}</p>
      {first?.setting === undefined || same.length === 0 ? null : (
        <p className="take-same">
          <b>{words.same}:</b>{' '}
          {same
            .map((figure) => `${words.figures[figure].toLowerCase()} ${figureOf(first, figure)}`)
            .join(', ')}
        </p>
      )}
      <table className="take-table figure-text">
        <thead>
          <tr>
            <th scope="col">{words.letter}</th>
            {varies.map((figure) => (
              <th key={figure} scope="col">
                {words.figures[figure]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {list.groups.flatMap(({ entries }) =>
            entries.map((entry) => (
              <tr key={entry.label}>
                <th scope="row">
                  <Swatch entry={entry} /> {entry.label}
                </th>
                {varies.map((figure) => (
                  <td key={figure}>
                    {figureOf(entry, figure)}
                    {entry.unchanged ? <span className="soft small"> {words.asBefore}</span> : null}
                  </td>
                ))}
              </tr>
            )),
          )}
        </tbody>
      </table>
      <ul className="take-others figure-text">
        {list.before.map((entry) => (
          <Other key={entry.label} entry={entry} when={words.first} />
        ))}
        {list.after.map((entry) => (
          <Other key={entry.label} entry={entry} when={words.last} />
        ))}
      </ul>
    </div>
  );
};

const Other = ({ entry, when }: { readonly entry: TypeInEntry; readonly when: string }) => (
  <li>
    <Swatch entry={entry} /> {entry.kind === 'rung' ? entry.label : words.labels[entry.kind]},{' '}
    {when}:{' '}
    {entry.setting === undefined
      ? words.unsaid
      : `${speedWords(entry.setting.speedMmPerS)}, ${powerWords(entry.setting.powerPct)}`}
  </li>
);

/** The colour by which the control program tells the layers apart; the letter beside it says the same. */
const Swatch = ({ entry }: { readonly entry: TypeInEntry }) => (
  <svg className="take-swatch" viewBox="0 0 10 10" aria-hidden="true">
    <rect width="10" height="10" fill={entry.colour} />
  </svg>
);

const hasCorners = (setting: Setting | undefined): boolean =>
  setting?.minPowerPct !== undefined && setting.minPowerPct !== setting.powerPct;

const figureOf = ({ setting }: TypeInEntry, figure: TypedFigure): string => {
  if (setting === undefined) return words.unsaid;
  switch (figure) {
    case 'speedMmPerS':
      return speedWords(setting.speedMmPerS);
    case 'powerPct':
      return powerWords(setting.powerPct);
    case 'minPowerPct':
      return powerWords(setting.minPowerPct ?? setting.powerPct);
    case 'passes':
      return String(setting.passes);
    case 'air':
      return airWords(setting.air);
  }
};

const airWords = (air: Air | undefined): string => {
  if (air === undefined) return words.airs.unsaid;
  return typeof air === 'string' ? words.airs[air] : words.airs.kPa(air.kPa);
};
