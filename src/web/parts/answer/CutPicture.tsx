import { grades } from '../../../core/reading/grade.ts';
import * as Plot from '@observablehq/plot';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { ChangeoverPoint, FitAnswer } from '../../../core/cutmodel/fitAnswer.ts';
import type { Study } from '../../../core/study/study.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { speedUnits } from '../../../core/units/speed.ts';
import { pictureText as words, unitsShown } from '../../../words/texts.ts';
import { besideOneAnother, gradedPoints, type PicturePoint } from './picturePoints.ts';
import './picture.css';

export interface CutPictureProps {
  readonly study: Study;
  readonly answer: FitAnswer;
}

/** Power across, speed up: the cells as they fell, the changeover, the fastest speed that holds, and where the tube ends. */
const CutPicture = ({ study, answer }: CutPictureProps) => {
  const holder = useRef<HTMLDivElement>(null);
  const width = useWidth(holder);
  const points = useMemo(() => gradedPoints(toCutStudy(study)), [study]);
  useEffect(() => {
    if (width === 0) return;
    const plot = drawn(answer, points, width);
    // The library writes a style element, which the content policy forbids: its rules stand in picture.css.
    plot.querySelectorAll('style').forEach((style) => style.remove());
    // The whole picture has one label, on its holder.
    plot.querySelectorAll('[aria-label]').forEach((part) => part.removeAttribute('aria-label'));
    holder.current?.replaceChildren(plot);
  }, [answer, points, width]);
  return (
    <figure className="picture">
      <div ref={holder} className="picture-plot" role="img" aria-label={words.label(answer)} />
      <figcaption>
        <ul className="picture-key">
          {grades.map((grade) => (
            <li key={grade}>
              <Sign grade={grade} /> {words.grades[grade]}
            </li>
          ))}
          <li>
            <span className="picture-line picture-line-holds" /> {words.holds}
          </li>
          <li>
            <span className="picture-line picture-line-half" /> {words.half}
          </li>
        </ul>
        <p className="small soft">
          {words.limit[answer.powerLimit.because](answer.powerLimit.powerPct)}
        </p>
      </figcaption>
    </figure>
  );
};

export default CutPicture;

const symbols: Readonly<Record<PicturePoint['grade'], 'circle' | 'triangle' | 'times'>> = {
  out: 'circle',
  hangs: 'triangle',
  stays: 'times',
};

/** How much larger than usual the page's text is: the picture grows with it. */
const scale = (): number =>
  Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 17;

const drawn = (answer: FitAnswer, points: readonly PicturePoint[], width: number) => {
  const k = scale();
  const { changeover, line, recommended, powerLimit } = answer;
  const speeds = points.map(({ speedMmPerS }) => speedMmPerS);
  const powers = points.map(({ powerPct }) => powerPct);
  const [least, most] = [Math.min(...powers), Math.max(...powers)];
  const room = Math.max(4, (most - least) * 0.25);
  const within = ({ powerPct }: { readonly powerPct: number }): boolean =>
    powerPct >= least - room && powerPct <= most + room;
  const seen = changeover.filter(within);
  const slowest = Math.min(...speeds, ...line.filter(within).map(({ speedMmPerS }) => speedMmPerS));
  const bottom = Math.max(0, Math.floor(slowest * 0.8));
  const top = Math.max(...speeds, ...seen.map(({ v50MmPerS }) => v50MmPerS)) * 1.15;
  const height = Math.round(Math.min(460 * k, Math.max(260 * k, width * 0.66)));
  const margin = { left: 52 * k, right: 20, bottom: 46 * k, top: 26 * k };
  const signs = besideOneAnother(points, {
    pxPerPct: (width - margin.left - margin.right) / (most - least + 2 * room),
    pxPerMmPerS: (height - margin.top - margin.bottom) / (top - bottom),
    signPx: 14 * k,
  });
  const oneMmPerS = speedUnits.factor[unitsShown().speed];
  /** As the axis has it: in the reader's own unit. */
  const shown = (speedMmPerS: number): number => speedMmPerS / oneMmPerS;
  const speedOf = ({ speedMmPerS }: { readonly speedMmPerS: number }): number => shown(speedMmPerS);
  return Plot.plot({
    width,
    height,
    marginLeft: margin.left,
    marginRight: margin.right,
    marginBottom: margin.bottom,
    marginTop: margin.top,
    className: 'cut-plot',
    x: {
      label: words.powerAxis,
      domain: [least - room, most + room],
      labelArrow: 'none',
      ticks: 5,
    },
    y: {
      label: words.speedAxis(),
      domain: [shown(bottom), shown(top)],
      grid: true,
      labelArrow: 'none',
      ticks: 6,
    },
    marks: [
      Plot.areaY(seen, {
        x: 'powerPct',
        y1: (each: ChangeoverPoint) => shown(Math.max(each.lowMmPerS, bottom)),
        y2: (each: ChangeoverPoint) => shown(Math.min(each.highMmPerS, top)),
        fill: 'var(--accent)',
        fillOpacity: 0.12,
      }),
      Plot.lineY(seen, {
        x: 'powerPct',
        y: ({ v50MmPerS }: ChangeoverPoint) => shown(v50MmPerS),
        stroke: 'var(--ink-soft)',
        strokeDasharray: '3 5',
        strokeWidth: 1.5,
      }),
      Plot.lineY(line.filter(within), {
        x: 'powerPct',
        y: speedOf,
        stroke: 'var(--accent)',
        strokeWidth: 3 * k,
      }),
      ...(within(powerLimit)
        ? [
            Plot.ruleX([powerLimit.powerPct], {
              stroke: 'var(--stop)',
              strokeWidth: 2,
              strokeDasharray: '8 3 2 3',
            }),
          ]
        : []),
      ...grades.map((grade) =>
        Plot.dot(
          signs.filter((point) => point.grade === grade),
          {
            x: 'powerPct',
            y: speedOf,
            symbol: symbols[grade],
            r: 5.5 * k,
            stroke: 'var(--ink)',
            strokeWidth: (grade === 'stays' ? 2.2 : 1.6) * k,
            fill: grade === 'out' ? 'var(--ink)' : grade === 'hangs' ? 'var(--wood)' : 'none',
          },
        ),
      ),
      ...(recommended === null
        ? []
        : [
            Plot.dot([recommended], {
              x: 'powerPct',
              y: speedOf,
              r: 10 * k,
              stroke: 'var(--accent)',
              strokeWidth: 3 * k,
            }),
          ]),
    ],
  });
};

const Sign = ({ grade }: { readonly grade: PicturePoint['grade'] }) => (
  <svg className="picture-sign" viewBox="-8 -8 16 16" aria-hidden="true">
    {grade === 'out' ? <circle className="sign-out" r={5.5} /> : null}
    {grade === 'hangs' ? <path className="sign-hangs" d="M0 -6.4 5.6 4.4H-5.6z" /> : null}
    {grade === 'stays' ? (
      <path className="sign-stays" d="M-4.6 -4.6 4.6 4.6M4.6 -4.6-4.6 4.6" />
    ) : null}
  </svg>
);

/** The holder's width in CSS pixels, as it changes. */
const useWidth = (holder: React.RefObject<HTMLElement | null>): number => {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const { current } = holder;
    if (current === null) return;
    const observer = new ResizeObserver(([entry]) => setWidth(entry?.contentRect.width ?? 0));
    observer.observe(current);
    return () => observer.disconnect();
  }, [holder]);
  return width;
};
