import type { Grade } from '../../../core/reading/grade.ts';

/** The three grades as they look: a hole, a piece tilted in its hole, a line with a bar; and spoilt, a cross. */
export const GradeIcon = ({ of }: { readonly of: Grade | 'spoilt' }) => (
  <svg className="grade-icon" viewBox="0 0 24 24" aria-hidden="true">
    {of === 'out' ? <path className="grade-hole" d={plus} /> : null}
    {of === 'hangs' ? (
      <>
        <path className="grade-hole" d={plus} />
        <path
          className="grade-piece"
          d={plus}
          transform="rotate(11 12 12) translate(1.9 1.9) scale(.84)"
        />
      </>
    ) : null}
    {of === 'stays' ? <path className="grade-line" d={`${plus}M9.5 12h5`} /> : null}
    {of === 'spoilt' ? <path className="grade-line" d="M6 6l12 12M18 6L6 18" /> : null}
  </svg>
);

const plus = 'M8.5 3h7v5.5H21v7h-5.5V21h-7v-5.5H3v-7h5.5z';
