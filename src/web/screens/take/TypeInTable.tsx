import type { Setting } from '../../../core/machine/setting.ts';
import type { TypedFigure, TypeInEntry, TypeInList } from '../../../core/card/typeInList.ts';
import { Scrolls } from '../../parts/page/Scrolls.tsx';
import { jobSheetText as words, takeText } from '../../../words/texts.ts';

/** What is typed, one line a letter, in the order of cutting; what is alike in all stands above, once. */
export const TypeInTable = ({ list }: { readonly list: TypeInList }) => {
  const rungs = list.groups.flatMap(({ entries }) => entries);
  const setting = rungs[0]?.setting;
  const corners = rungs.some((rung) => hasCorners(rung.setting));
  const shown = (figures: readonly TypedFigure[]) =>
    figures.filter((figure) => figure !== 'minPowerPct' || corners);
  const varies = list.varies.length === 0 ? (['speedMmPerS'] as const) : shown(list.varies);
  const same = shown(list.same);
  const unchanged = rungs.filter((entry) => entry.unchanged).length;
  return (
    <div className="stack">
      <p>{words.toType(list.toType, unchanged)}</p>
      {setting === undefined || same.length === 0 ? null : (
        <p className="take-same">{words.everywhere(words.same(same, setting))}</p>
      )}
      {corners ? null : <p className="small soft">{takeText.corners}</p>}
      <Scrolls label={words.typeInTitle}>
        <table className="take-table figure-text">
          <thead>
            <tr>
              <th scope="col">{takeText.letter}</th>
              {varies.map((figure) => (
                <th key={figure} scope="col">
                  {words.figureName(figure)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rungs.map((entry) => (
              <tr key={entry.label}>
                <th scope="row">
                  <Swatch entry={entry} /> {entry.label}
                </th>
                {varies.map((figure, i) => (
                  <td key={figure}>
                    {figureOf(entry, figure)}
                    {entry.unchanged && i === 0 ? (
                      <span className="soft small"> {words.unchanged}</span>
                    ) : null}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolls>
      <ul className="take-others figure-text">
        {list.before.map((entry) => (
          <Other key={entry.label} entry={entry} when={takeText.first} />
        ))}
        {list.after.map((entry) => (
          <Other key={entry.label} entry={entry} when={takeText.last} />
        ))}
      </ul>
    </div>
  );
};

const Other = ({ entry, when }: { readonly entry: TypeInEntry; readonly when: string }) => (
  <li>
    <Swatch entry={entry} /> {words.label(entry.label)}, {when}:{' '}
    {entry.setting === undefined
      ? words.settingUnsaid
      : words.same(['speedMmPerS', 'powerPct'], entry.setting)}
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

const figureOf = ({ setting }: TypeInEntry, figure: TypedFigure): string =>
  setting === undefined ? words.settingUnsaid : words.figure(figure, setting);
