import { useEffect, useRef, useState } from 'react';
import type { Quad } from '../../../core/photo/quads.ts';
import { Action } from '../action/Action.tsx';
import { Section } from '../page/Page.tsx';
import { Said } from '../said/Said.tsx';
import { drawnUpright } from '../../worker/onCanvas.ts';
import './photo-parts.css';

export interface CornersByHandProps {
  readonly words: {
    readonly corners: string;
    readonly cornersMore: string;
    readonly cornersPicture: string;
    readonly cornersTapped: (count: number) => string;
    readonly cornersRead: string;
    readonly cornersAnew: string;
  };
  readonly photo: File;
  readonly onCorners: (corners: Quad) => void;
}

/** A person points at the four corners of what is on a photograph, where nothing else finds them; each need only be near. */
export const CornersByHand = ({ words, photo, onCorners }: CornersByHandProps) => {
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
