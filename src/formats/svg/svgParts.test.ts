import { describe, expect, it } from 'vitest';

import { mapped, type Matrix } from '../../core/path/matrix.ts';
import { colourKey } from './svgColour.ts';
import { svgLength, svgLengthMm } from './svgLength.ts';
import { StyleSheet } from './svgStyle.ts';
import { readTransform } from './svgTransform.ts';
import { fitted } from './svgViewBox.ts';

const rounded = (matrix: Matrix | undefined): readonly number[] | undefined =>
  matrix?.map((value) => Number(value.toFixed(6)));

describe('a transform', () => {
  it('is the matrix that the standard gives (CSS Transforms 1, 12)', () => {
    expect(readTransform('matrix(1,2,3,4,5,6)')).toEqual([1, 2, 3, 4, 5, 6]);
    expect(readTransform('translate(10)')).toEqual([1, 0, 0, 1, 10, 0]);
    expect(readTransform('scale(2)')).toEqual([2, 0, 0, 2, 0, 0]);
    expect(readTransform('scale(2 -3)')).toEqual([2, 0, 0, -3, 0, 0]);
    expect(rounded(readTransform('rotate(90)'))).toEqual([0, 1, -1, 0, 0, 0]);
    expect(rounded(readTransform('rotate(90 10 20)'))).toEqual([0, 1, -1, 0, 30, 10]);
    expect(rounded(readTransform('skewX(45)'))).toEqual([1, 0, 1, 1, 0, 0]);
    expect(rounded(readTransform('skewY(45)'))).toEqual([1, 1, 0, 1, 0, 0]);
  });

  it('acts from the last named to the first, with or without commas', () => {
    const matrix = readTransform(' translate(10,5) , scale(2)\nrotate(90)');
    const [x, y] = mapped(matrix ?? [0, 0, 0, 0, 0, 0], [3, 0]);
    expect(x).toBeCloseTo(10, 12);
    expect(y).toBeCloseTo(11, 12);
    expect(readTransform('')).toEqual([1, 0, 0, 1, 0, 0]);
  });

  it('that is none is told', () => {
    for (const text of [
      'rotate(1 2)',
      'matrix(1 2 3)',
      'turn(3)',
      'scale 2',
      'scale(2) x',
      'scale()',
    ])
      expect(readTransform(text)).toBeUndefined();
  });
});

describe('a length', () => {
  it('is in mm for the page and in units within it (CSS Values 3, 5.2)', () => {
    expect(svgLengthMm('2in')).toBeCloseTo(50.8, 12);
    expect(svgLengthMm('40Q')).toBeCloseTo(10, 12);
    expect(svgLengthMm('100%')).toBeUndefined();
    expect(svgLengthMm('-3mm')).toBeUndefined();
    expect(svgLength('1in', 0)).toBeCloseTo(96, 12);
    expect(svgLength('25%', 80)).toBe(20);
    expect(svgLength('-1.5e1', 0)).toBe(-15);
    expect(svgLength('2em', 0)).toBe(32);
    expect(svgLength('wide', 0)).toBeUndefined();
  });
});

describe('a viewBox in a frame', () => {
  const box = { left: 10, top: 20, width: 100, height: 50 };
  const corners = (how: string | undefined): readonly (readonly number[])[] => {
    const matrix = fitted(box, { width: 400, height: 400 }, how);
    return [mapped(matrix, [10, 20]), mapped(matrix, [110, 70])];
  };

  it('is fitted as preserveAspectRatio says (SVG 2, 8.7)', () => {
    expect(corners(undefined)).toEqual([
      [0, 100],
      [400, 300],
    ]);
    expect(corners('xMinYMin')).toEqual([
      [0, 0],
      [400, 200],
    ]);
    expect(corners('xMaxYMax meet')).toEqual([
      [0, 200],
      [400, 400],
    ]);
    expect(corners('xMidYMid slice')).toEqual([
      [-200, 0],
      [600, 400],
    ]);
    expect(corners('xMinYMid slice')).toEqual([
      [0, 0],
      [800, 400],
    ]);
    expect(corners('none')).toEqual([
      [0, 0],
      [400, 400],
    ]);
    expect(corners('nonsense')).toEqual(corners(undefined));
  });
});

describe('a colour', () => {
  it('is one key, however it is written (CSS Color 4)', () => {
    for (const text of [
      '#f00',
      '#FF0000',
      'red',
      'rgb(255,0,0)',
      'rgb(100%, 0%, 0%)',
      'hsl(0 100% 50%)',
    ])
      expect([text, colourKey(text)]).toEqual([text, '#ff0000']);
    expect(colourKey('none')).toBeUndefined();
    expect(colourKey('currentColor', 'blue')).toBe('#0000ff');
    expect(colourKey('currentColor', 'currentColor')).toBe('#000000');
    expect(colourKey('url(#a) lime')).toBe('#00ff00');
    expect(colourKey('url(#a)')).toBeUndefined();
    expect(colourKey('odd')).toBe('odd');
    expect(colourKey('url(#a)'.repeat(100_000))).toBeUndefined();
  });
});

describe('style rules', () => {
  const styled = (css: string, attributes: Record<string, string>): string | undefined => {
    const sheet = new StyleSheet();
    sheet.add(css);
    return sheet.styleOf('path', attributes).stroke;
  };

  it('count by weight: id, class, name, then order; the own style above, attributes below (CSS Cascade 4, 6)', () => {
    const css = '#i{stroke:id}.c{stroke:class}path{stroke:name}*{stroke:any}.d{stroke:later}';
    expect(styled(css, { id: 'i', class: 'c d', stroke: 'own' })).toBe('id');
    expect(styled(css, { class: 'd c', stroke: 'own' })).toBe('later');
    expect(styled(css, { stroke: 'own' })).toBe('name');
    expect(styled('', { stroke: 'own' })).toBe('own');
    expect(styled(css, { id: 'i', style: 'fill:none; stroke : inline' })).toBe('inline');
    expect(styled('.c{stroke:class ! important}', { class: 'c', style: 'stroke:inline' })).toBe(
      'class',
    );
    expect(styled('path.c{stroke:both}.c{stroke:class}', { class: 'c' })).toBe('both');
    expect(styled('rect.c{stroke:both}.c{stroke:class}', { class: 'c' })).toBe('class');
    expect(styled('.x, .c{stroke:list}', { class: 'c' })).toBe('list');
  });

  it('keep to the sense through comments, @-rules and rubbish', () => {
    const css =
      '@import "a.css"; /* .c{stroke:no} */ @media print { .c{stroke:print} } .c{stroke:yes';
    expect(styled(css, { class: 'c' })).toBe('yes');
    const sheet = new StyleSheet();
    sheet.add(
      'g > path{stroke:a} path:hover{fill:b} .c [x]{color:c} .d{font-size:3px} g path{margin:0}',
    );
    expect(sheet.unread).toBe(3);
  });

  // A tenth of this on an idle computer; what grows with the square would take hours.
  it.each([
    ...['/*', '@import', '{', '}', '@media{', ';', ':', ' ', '!', 'a,', '.a{@import '],
    ...['.a{stroke:b}', '.a.b{stroke:c}', 'a{stroke:', 'a{stroke: ! '],
  ])('cost no more than their length: %s, 200 000 times', { timeout: 10_000 }, (css) => {
    const sheet = new StyleSheet();
    sheet.add(css.repeat(200_000));
    expect(sheet.styleOf('path', { class: 'z' })).toEqual({});
  });
});
