import { readingText as words } from '../../../words/texts.ts';

/** The one standard act, in words and in a small drawing: without it two readers do not mean the same by "out". */
export const StandardAct = () => (
  <div className="strip strip-act">
    <ActDrawing />
    <div>
      <p className="strip-name">{words.act}</p>
      <p>{words.actHow}</p>
      <p className="strip-more">{words.pickCell}</p>
    </div>
  </div>
);

/** A card held level between two hands, a knuckle above it, a piece that has dropped below. */
const ActDrawing = () => (
  <svg className="act-drawing" viewBox="0 0 120 84" aria-hidden="true">
    <path className="act-wood" d="M14 40h36v6H14zM66 40h40v6H66z" />
    <path className="act-wood act-dropped" d="M51 60l14 3-1.2 5.6-14-3z" />
    <path className="act-line" d="M58 49v7m-3-3 3 4 3-4" />
    <path className="act-line" d="M2 34c6 2 10 4 14 4h6c3 0 3 4 0 4h-5M2 52c7 1 12-1 17-4" />
    <path className="act-line" d="M118 34c-6 2-10 4-14 4h-6c-3 0-3 4 0 4h5M118 52c-7 1-12-1-17-4" />
    <path
      className="act-line"
      d="M70 6c6-1 13 1 15 6 1 4 0 9-4 12-2 2-6 2-8-1-4 1-8-1-9-5-1-5 2-11 6-12zM73 23l-1 7m5-6 0 7m5-9 2 7"
    />
  </svg>
);
