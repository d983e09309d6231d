import { compareTwo } from '../../app/sums/compareTwo.ts';
import { serveCalls } from './serveCalls.ts';

serveCalls({ compare: (two) => compareTwo(two) });
