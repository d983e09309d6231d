import { undescribedMachine, type Machine } from '../../core/machine/machine.ts';
import { defaultPromise } from '../../core/reading/promise.ts';
import type { Stock } from '../../core/stock/stock.ts';
import type { Study } from '../../core/study/study.ts';
import { newId } from './newId.ts';

/** A study with nothing in it but its sheet. Nothing is saved until it is started. */
export const newStudy = (stock: Stock, machine: Machine = undescribedMachine): Study => ({
  version: 1,
  id: newId(),
  isExample: false,
  createdAt: new Date().toISOString(),
  stock,
  machine,
  promise: defaultPromise,
  aim: 'fastest',
  ask: {},
  tallies: [],
  cards: [],
  events: [],
});

/** The commonest sheet on the bed of a small laser. Common practice, no source. */
export const commonStock: Stock = {
  material: 'plywood',
  nominalThicknessMm: 3,
  thicknessReadingsMm: [],
};

/** A power setting that many run for it. Common practice, no source. */
export const commonPowerPct = 30;
