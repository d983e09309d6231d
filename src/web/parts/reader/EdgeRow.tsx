import { edgesOf, type EdgeAsRead, type EdgeKind } from '../../../core/reading/edge.ts';
import { readingText as words } from '../../../words/texts.ts';

export interface EdgeRowProps {
  readonly kind: EdgeKind;
  readonly said: EdgeAsRead | undefined;
  /** The one graded before it was cut through tape. */
  readonly isTaped: boolean;
  /** Undefined: what was said is taken back. */
  readonly onSay: (edge: EdgeAsRead | undefined) => void;
}

/** The edge of a shape that came out, for who cares: one tap, and a second on the same takes it back. */
export const EdgeRow = ({ kind, said, isTaped, onSay }: EdgeRowProps) => {
  const taped = said === undefined ? isTaped : said.taped === true;
  const tape = (through: boolean) => (through ? { taped: true as const } : {});
  return (
    <div className="strip-edge" role="group" aria-label={words.edgeHow}>
      <span className="strip-edge-name" aria-hidden="true">
        {words.edge}
      </span>
      {edgesOf[kind].map((edge) => (
        <button
          key={edge}
          type="button"
          className="strip-way"
          aria-pressed={said?.edge === edge}
          onClick={() => onSay(said?.edge === edge ? undefined : { edge, ...tape(taped) })}
        >
          {words.edges[edge]}
        </button>
      ))}
      {kind === 'wood' && said !== undefined ? (
        <button
          type="button"
          className="strip-way"
          aria-pressed={taped}
          onClick={() => onSay({ edge: said.edge, ...tape(!taped) })}
        >
          {words.taped}
        </button>
      ) : null}
    </div>
  );
};
