import { scorePromises, type PromiseScore } from '../../core/score/scorePromises.ts';
import { sheetsToScore, type ScoredSheet } from '../../core/score/sheetsToScore.ts';
import { exportAll } from './exportAll.ts';
import type { Ports } from '../ports/ports.ts';

/** The workshop's own counts that something had been promised of. What cannot be read is left out. */
export const countsPromised = async (
  ports: Pick<Ports, 'store' | 'clock'>,
): Promise<readonly ScoredSheet[]> => sheetsToScore(await exportAll(ports));

/** Whether promises hold in this workshop: what was promised of every sheet that was counted, held against what came. */
export const scoreWorkshop = async (ports: Pick<Ports, 'store' | 'clock'>): Promise<PromiseScore> =>
  scorePromises(await countsPromised(ports));
