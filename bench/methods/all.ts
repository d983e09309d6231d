import { gridEye } from './gridEye.ts';
import { gridMl } from './gridMl.ts';
import { halving } from './halving.ts';
import type { Method } from './method.ts';
import { throughcut } from './throughcut.ts';

/** Every method, on the same seeds. */
export const allMethods: readonly Method[] = [gridEye, gridMl, halving, throughcut];
