import { orderAnswer } from '../../core/order/orderAnswer.ts';
import { fitWithEarlier } from '../../core/study/answerWithEarlier.ts';
import { heldBackBy } from '../../core/study/settingHeldBack.ts';
import { serveCalls } from './serveCalls.ts';

serveCalls({
  order: ({ study, earlier, wish }) => {
    const fitted = fitWithEarlier(study, earlier);
    const problem = wish.setting && heldBackBy(fitted, wish.setting);
    return problem === undefined ? orderAnswer(fitted, wish) : { ok: false, problem };
  },
});
