import { fitMotion } from '../../core/motion/fitMotion.ts';
import { serveCalls } from './serveCalls.ts';

serveCalls({ motion: (jobs) => fitMotion(jobs) });
