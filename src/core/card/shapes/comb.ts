import { unitOutline, type UnitShape } from './unitShape.ts';

/** Four teeth with slots of three depths: the head turns back on itself beside a cut that is still hot. */
export const comb: UnitShape = {
  flatters: false,
  outline: unitOutline([
    [0, 9],
    [0, 0],
    [1.8, 0],
    [1.8, 5.4],
    [2.8, 5.4],
    [2.8, 0.8],
    [3.65, 0],
    [4.5, 0.8],
    [4.5, 6.2],
    [5.5, 6.2],
    [5.5, 0],
    [7.2, 0],
    [7.2, 4.6],
    [8.2, 4.6],
    [8.2, 0.8],
    [9.1, 0],
    [10, 0.8],
    [10, 9],
    [6.2, 9],
    [5, 7.9],
    [3.8, 9],
  ]),
};
