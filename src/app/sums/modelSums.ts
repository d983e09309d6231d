import { done } from '../../core/problem.ts';
import type { ModelSums } from './model.ts';

/**
 * The sums themselves, each a function of its question alone. Whoever runs them, a thread of their own or the caller, finds
 * each here; each loads its part of the model when it is first asked.
 */
export const modelSums: ModelSums = {
  answerCutStudy: async (study) => (await import('./answerCutStudy.ts')).answerCutStudy(study),
  answerWithEarlier: async ({ cut, aim, earlier }) => {
    const { answerWithEarlier } = await import('../../core/study/answerWithEarlier.ts');
    return done(answerWithEarlier(cut, aim, earlier));
  },
  answerStudy: async (question) =>
    (await import('./answerCutStudy.ts')).answerWithHistory(question),
  answerToDesignBy: async ({ cut, earlier }) => {
    const { answerToDesignBy } = await import('../../core/study/cardRequestFor.ts');
    return done(answerToDesignBy(cut, earlier));
  },
  nextCard: async ({ study, wish, earlier }) =>
    (await import('./nextCardFor.ts')).nextCardFor(study, wish, earlier),
  explainCutStudy: async (study) => (await import('./explainCutStudy.ts')).explainCutStudy(study),
  explainStudy: async ({ study, earlier }) => {
    const { explainWithEarlier } = await import('../../core/explain/explainWithEarlier.ts');
    return done(explainWithEarlier(study, earlier));
  },
  compareTwo: async (two) => (await import('./compareTwo.ts')).compareTwo(two),
  judgeKept: async (question) => done((await import('./judgeKept.ts')).judgeKept(question)),
  laserOrWood: async ({ cut, earlier, strips }) => {
    const { fitWithEarlier } = await import('../../core/study/answerWithEarlier.ts');
    const { laserOrWood } = await import('../../core/watch/laserOrWood.ts');
    return done(laserOrWood(fitWithEarlier(cut, earlier), strips));
  },
  stripToCut: async (question) => (await import('./stripToCut.ts')).stripToCut(question),
  exampleWorkshop: async (now) => {
    const { exampleWorkshop } = await import('../../core/virtual/exampleWorkshop.ts');
    return done(exampleWorkshop(now));
  },
  answerOrder: async ({ study, wish }) =>
    (await import('./answerOrder.ts')).answerOrder(study, wish),
  planOrder: async (question) => (await import('./planOrder.ts')).planOrder(question),
  watchByFile: async (file) => (await import('./watchByFile.ts')).watchByFile(file),
  checkFile: async (file) => (await import('../drawing/checkFile.ts')).checkFile(file),
  growDrawing: async (drawing) => (await import('../drawing/growDrawing.ts')).growDrawing(drawing),
  gradePhotos: async (photos) => done((await import('./gradePhotos.ts')).gradePhotos(photos)),
  proveOnDrawing: async (drawing) =>
    (await import('../drawing/proveOnDrawing.ts')).proveOnDrawing(drawing),
};
