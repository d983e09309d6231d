import type { Setting } from '../../../core/machine/setting.ts';
import { powerWords, speedWords } from '../../../words/texts.ts';
import './chips.css';

/** Settings in a row, each whole. */
export const RungChips = ({ settings }: { readonly settings: readonly Setting[] }) => (
  <ul className="chips">
    {settings.map(({ powerPct, speedMmPerS, passes }) => (
      <li key={`${powerPct}/${speedMmPerS}/${passes}`} className="chip figure-text">
        <b>{speedWords(speedMmPerS)}</b> {powerWords(powerPct)}
        {passes === 1 ? '' : ` ×${passes}`}
      </li>
    ))}
  </ul>
);
