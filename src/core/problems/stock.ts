import { judgedMaterialNames, isCautionedMaterial, isRefusedMaterial } from '../judgedMaterials.ts';
import { figure, oneOf, text, type ProblemList } from './param.ts';

/** What can be the matter with a stock, or is worth asking about it. */
export const stockProblems = {
  'material-refused': { text, judged: oneOf(judgedMaterialNames.filter(isRefusedMaterial)) },
  'material-caution': { judged: oneOf(judgedMaterialNames.filter(isCautionedMaterial)) },
  'material-which-leather': { text },
  'material-which-felt': { text },
  'material-which-cloth': { text },
  'material-which-plastic': { text },
  'material-which-layers': { text },
  'material-what-instead': { text },
  'material-rubber-data-sheet': { text },
  'material-unknown': { text },
  'air-off-burns': {},
  'label-lies': { meanMm: figure, nominalMm: figure, uncertaintyMm: figure, differencePct: figure },
  'label-beyond-standard': {
    leastMm: figure,
    mostMm: figure,
    standard: text,
    meanMm: figure,
    nominalMm: figure,
    uncertaintyMm: figure,
    differencePct: figure,
  },
  'thickness-one-reading': {},
  'thickness-readings-disagree': { leastMm: figure, mostMm: figure },
  'energy-too-little': {
    factor: figure,
    watts: figure,
    speedMmPerS: figure,
    thicknessMm: figure,
    energyJPerMm2: figure,
  },
  'energy-too-much': {
    factor: figure,
    watts: figure,
    speedMmPerS: figure,
    thicknessMm: figure,
    energyJPerMm2: figure,
  },
  'speed-looks-too-fast': {
    factor: figure,
    speedMmPerS: figure,
    powerPct: figure,
    thicknessMm: figure,
  },
  'speed-looks-too-slow': {
    factor: figure,
    speedMmPerS: figure,
    powerPct: figure,
    thicknessMm: figure,
  },
} as const satisfies ProblemList;

export type StockCode = keyof typeof stockProblems;

/** A question that a name itself leaves open. */
export type OpenQuestion = Extract<StockCode, `material-which-${string}`>;
