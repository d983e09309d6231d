import { orderAnswer } from '../../core/order/orderAnswer.ts';
import { fitWithEarlier } from '../../core/study/answerWithEarlier.ts';
import { serveCalls } from './serveCalls.ts';

serveCalls({
  order: ({ study, earlier, wish }) => orderAnswer(fitWithEarlier(study, earlier), wish),
});
