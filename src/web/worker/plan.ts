import { planOrder } from '../../app/sums/planOrder.ts';
import { serveCalls } from './serveCalls.ts';

serveCalls({ plan: (question) => planOrder(question) });
