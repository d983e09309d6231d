import { useEffect, useRef, useState } from 'react';
import type { Quad } from '../../../core/photo/quads.ts';
import { photoText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { Said } from '../../parts/said/Said.tsx';
import { drawnUpright } from '../../worker/onCanvas.ts';

export interface CornersByHandProps {
  readonly photo: File;
  readonly onCorners: (corners: Quad) => void;
}

/** Where the card was not found, a person points at its corners; each need only be near, since the sides snap. */
export const CornersByHand = ({ photo, onCorners }: CornersByHandProps) => {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [tapped, setTapped] = useState<readonly Quad[number][]>([]);
  useEffect(() => {
    void drawnUpright(photo).then((drawn) => {
      const shown = canvas.current;
      if (drawn === undefined || shown === null) return;
      shown.width = drawn.canvas.width;
      shown.height = drawn.canvas.height;
      shown.getContext('2d')?.drawImage(drawn.canvas, 0, 0);
    });
  }, [photo]);
  const [a, b, c, d] = tapped;
  return (
    <Section title={words.corners}>
      <p>{words.cornersMore}</p>
      <div
        className="photo-corners"
        onClick={({ currentTarget, clientX, clientY }) => {
          const { left, top, width, height } = currentTarget.getBoundingClientRect();
          if (tapped.length < 4)
            setTapped([...tapped, [(clientX - left) / width, (clientY - top) / height]]);
        }}
      >
        <canvas ref={canvas} role="img" aria-label={words.cornersPicture} />
        {tapped.map(([x, y], i) => (
          <span
            key={i}
            className="photo-corner"
            style={{ left: `${String(100 * x)}%`, top: `${String(100 * y)}%` }}
          />
        ))}
      </div>
      <Said what="done">{words.cornersTapped(tapped.length)}</Said>
      <div className="actions">
        <Action
          kind="strong"
          isDisabled={d === undefined}
          onPress={() => {
            if (a !== undefined && b !== undefined && c !== undefined && d !== undefined)
              onCorners([a, b, c, d]);
          }}
        >
          {words.cornersRead}
        </Action>
        <Action kind="quiet" isDisabled={tapped.length === 0} onPress={() => setTapped([])}>
          {words.cornersAnew}
        </Action>
      </div>
    </Section>
  );
};
