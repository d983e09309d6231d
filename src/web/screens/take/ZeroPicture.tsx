import type { Card } from '../../../core/card/card.ts';
import { takeText as words, jobSheetText } from '../../../words/texts.ts';
import { SheetPicture } from '../../parts/sheet/SheetPicture.tsx';

/** Where zero is set. */
export const ZeroPicture = ({ card }: { readonly card: Card }) => (
  <figure className="zero" role="img" aria-label={words.zeroPicture}>
    <SheetPicture card={card} words="as-cut" />
    <svg className="zero-cross" viewBox="-12 -12 24 24" aria-hidden="true">
      <circle r="5" />
      <path d="M-11 0h22M0-11v22" />
    </svg>
    <span className="zero-word" aria-hidden="true">
      {jobSheetText.zeroHere}
    </span>
  </figure>
);
