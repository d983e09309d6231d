import { explainWithEarlier } from '../../core/explain/explainWithEarlier.ts';
import { serveCalls } from './serveCalls.ts';

serveCalls({ explain: ({ study, earlier }) => explainWithEarlier(study, earlier) });
