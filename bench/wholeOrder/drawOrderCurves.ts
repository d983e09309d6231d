import { drawPanels, type Look, type Row } from '../curves/drawPanels.ts';

/** One way of getting orders of one size done in one workshop. */
export interface OrderPoint {
  readonly workshop: string;
  readonly parts: number;
  readonly orders: number;
  readonly method: string;
  readonly excessPctMedian: number | null;
  readonly excessPctP90: number | null;
  readonly notOutPctMean: number;
  readonly promiseBrokenPct: number;
  readonly noPlanPct: number;
}

/** Colours after Okabe & Ito (2008), told apart by mark and dashes as well. */
const looks: Readonly<Record<string, Look>> = {
  'throughcut-cheapest': { colour: '#0072B2', mark: 'disc', wide: true },
  'throughcut-promise': { colour: '#009E73', mark: 'disc', wide: true },
  'throughcut-cheapest-no-card': { colour: '#0072B2', mark: 'square', dash: '3 3' },
  'throughcut-cheapest-one-setting': { colour: '#0072B2', mark: 'triangle', dash: '8 3' },
  'throughcut-cheapest-no-look-ahead': { colour: '#0072B2', mark: 'diamond', dash: '5 3' },
  'cards-first': { colour: '#D55E00', mark: 'square' },
  'grid-eye': { colour: '#999999', mark: 'cross' },
};

/** A point of so many orders is drawn full, of fewer hollow. */
const manyOrders = 24;

const rows: readonly Row<OrderPoint>[] = [
  {
    title: 'whole cost over that of one who knows, in % (median)',
    range: [0, 100],
    ticks: [0, 20, 40, 60, 80, 100],
    line: 0,
    value: (point) => point.excessPctMedian,
  },
  {
    title: 'the same, of the dearest tenth',
    range: [0, 150],
    ticks: [0, 50, 100, 150],
    line: 0,
    value: (point) => point.excessPctP90,
  },
  {
    title: 'sound parts not out, in % (mean)',
    range: [0, 10],
    ticks: [0, 2, 4, 6, 8, 10],
    line: 4,
    value: (point) => point.notOutPctMean,
  },
];

/** Panels of workshops beside each other, measures below each other; parts of an order across. */
export const drawOrderCurves = (points: readonly OrderPoint[]): string => {
  const orders = points.map((point) => point.orders);
  return drawPanels(points, {
    rows,
    across: {
      title: 'parts ordered, 30 a sheet, 180 mm of cut each',
      range: [27, 2200],
      ticks: [30, 60, 120, 300, 900, 2000],
      value: (point) => point.parts,
    },
    looks,
    joined: (own) => own.toSorted((a, b) => a.parts - b.parts),
    isFew: (point) => point.orders < manyOrders,
    notes: [
      `${String(Math.min(...orders))} to ${String(Math.max(...orders))} orders a point (hollow: fewer than ${String(manyOrders)}), the same seeds for every way.`,
      'cards-first: three cards of eight, then the promised speed. grid-eye: a found card of 25, one step surer, by eye.',
      'no-card, one-setting, no-look-ahead: the plan without that idea.',
    ],
  });
};
