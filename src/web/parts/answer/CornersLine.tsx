import type { FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import { answerText as words } from '../../../words/texts.ts';

/** How little power in corners keeps the promise, where cells with less were cut. */
export const CornersLine = ({ corners }: { corners: FitAnswer['corners'] }) =>
  corners === undefined ? null : (
    <p className="small">{words.corners(corners.leastMinPowerPct, corners.speedMmPerS)}</p>
  );
