import { settingKey, type Setting } from '../machine/setting.ts';
import type { CardRequest } from './cardRequest.ts';
import { energyCeiling, energyRatio, slowestAllowed } from './ceiling.ts';
import { overdriveRemarks } from './overdriveRemarks.ts';
import type { CardProblem } from './cardProblem.ts';
import { settingsFor, settingsWanted } from './ladders.ts';
import { stepNotSlower } from '../machine/speedSteps.ts';

export interface CardSettings {
  /** Each once. */
  readonly settings: readonly Setting[];
  /** What was changed in them, and what to know of them. */
  readonly remarks: readonly CardProblem[];
}

/** The settings of a card: those that its question asks for, or those said outright, held to the ceiling. */
export const cardSettings = (request: CardRequest): CardSettings => {
  const chosen = request.rungs === undefined ? asked(request) : outright(request, request.rungs);
  return {
    settings: chosen.settings,
    remarks: [...chosen.remarks, ...overdriveRemarks(chosen.settings, request.machine)],
  };
};

const asked = (request: CardRequest): CardSettings => {
  const settings = settingsFor(request);
  const wanted = settingsWanted(request);
  // Two ways share the settings out evenly and may leave a few: only what the machine's range took away is worth a word.
  const short = settings.length < (request.vary === 'speed-and-power' ? wanted - 2 : wanted);
  return {
    settings,
    remarks: short
      ? [{ code: 'card-fewer-rungs-than-asked', params: { rungs: settings.length, asked: wanted } }]
      : [],
  };
};

const outright = (request: CardRequest, said: readonly Setting[]): CardSettings => {
  const held = said.map((setting) => heldToCeiling(request, setting));
  const distinct = new Map(held.map(({ setting }) => [settingKey(setting), setting]));
  return {
    settings: [...distinct.values()],
    remarks: held.flatMap(({ remarks }) => remarks),
  };
};

const heldToCeiling = (
  request: CardRequest,
  said: Setting,
): { readonly setting: Setting; readonly remarks: readonly CardProblem[] } => {
  const setting = asTyped(request, said);
  const remarks: CardProblem[] = [];
  if (setting.speedMmPerS !== said.speedMmPerS || setting.powerPct !== said.powerPct) {
    remarks.push({
      code: 'card-rung-rounded',
      params: {
        saidMmPerS: said.speedMmPerS,
        saidPct: said.powerPct,
        speedMmPerS: setting.speedMmPerS,
        powerPct: setting.powerPct,
      },
    });
  }
  if (energyRatio(setting, request.believed) <= energyCeiling) return { setting, remarks };
  const speedMmPerS = stepNotSlower(
    slowestAllowed(setting.powerPct, setting.passes, request.believed),
  );
  remarks.push({
    code: 'card-rung-sped-up-to-ceiling',
    params: {
      saidMmPerS: setting.speedMmPerS,
      powerPct: setting.powerPct,
      speedMmPerS,
      times: Number(energyRatio(setting, request.believed).toFixed(1)),
    },
  });
  return { setting: { ...setting, speedMmPerS }, remarks };
};

/** To one decimal, which is what can be typed; with the card's air where none was said. */
const asTyped = (request: CardRequest, said: Setting): Setting => ({
  ...(request.air === undefined ? {} : { air: request.air }),
  ...said,
  powerPct: Number(said.powerPct.toFixed(1)),
  speedMmPerS: Math.max(0.1, Number(said.speedMmPerS.toFixed(1))),
});
