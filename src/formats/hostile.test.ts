import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Toolpath } from '../core/filecheck/toolpath.ts';
import type { Outcome } from '../core/problem.ts';
import {
  doubling,
  longFiles,
  many,
  ringOfCopies,
  svgOf as svg,
  wordsOfWords,
} from '../../bench/hostile/hostileFiles.ts';
import { readToolpath } from './readToolpath.ts';

// Files made to tie up whoever reads them. Each takes a second or two on an idle computer, and the limit of time is far
// beyond that, for busy ones: what grows with the square or doubles would take hours.

const codeOf = (text: string): string => {
  const outcome = readToolpath(text);
  return outcome.ok ? 'none' : outcome.problem.code;
};
const quick = { timeout: 60_000 };

describe('a hostile SVG is refused', () => {
  it('for words made of words, however they are declared', quick, () => {
    const declared = (subset: string): string =>
      `<!DOCTYPE svg [${subset}]>${svg('<text>&b;</text>')}`;
    for (const subset of [
      '<!ENTITY b SYSTEM "file:///etc/passwd">',
      '<!ENTITY % p "x"><!ENTITY b "%p;">',
      '<!ENTITY b "<path/>">',
      `<!ENTITY b "${'x'.repeat(1000)}">`,
      many(100, (i) => `<!ENTITY e${String(i)} "x">`),
    ])
      expect(codeOf(declared(subset))).toBe('drawing-declares-entities');
    expect(codeOf(wordsOfWords())).toBe('drawing-declares-entities');
    const long = `<!DOCTYPE svg [<!ENTITY b "${'x'.repeat(100)}">]>${svg(`<text>${'&b;'.repeat(1_000_000)}</text>`)}`;
    expect(codeOf(long)).toBe('drawing-declares-entities');
    expect(codeOf(svg('<text>&constructor;&__proto__;</text>'))).not.toBe('thrown');
  });

  it('for copies of itself, over any number of steps', quick, () => {
    expect(codeOf(svg('<g id="a"><use href="#a"/></g>'))).toBe('drawing-copies-itself');
    expect(codeOf(ringOfCopies())).toBe('drawing-copies-itself');
    expect(codeOf(svg('<symbol id="s"><use href="#s"/></symbol><use href="#s"/>'))).toBe(
      'drawing-copies-itself',
    );
    // Never drawn, never copied.
    expect(codeOf(svg('<defs><g id="a"><use href="#a"/></g></defs>'))).toBe('none');
  });

  it('for copies that double, of lines or of nothing', quick, () => {
    expect(codeOf(doubling('<path d="M0 0h1"/>'))).toBe('drawing-too-many-parts');
    expect(codeOf(doubling(''))).toBe('drawing-too-many-parts');
    const long = `<path id="p" d="${'M0 0'.repeat(1_000_000)}"/>`;
    expect(codeOf(svg(long + '<use href="#p"/>'.repeat(10_000)))).toBe('drawing-too-many-parts');
    const styled = `<g id="p" style="${'fill:none;'.repeat(100_000)}" transform="${'scale(1) '.repeat(100_000)}"><title>${'x '.repeat(500_000)}</title></g>`;
    expect(codeOf(svg(styled + '<use href="#p"/>'.repeat(100_000)))).toBe('none');
    const fork = `<g id="p"><switch>${'<g systemLanguage="de"/>'.repeat(100_000)}</switch></g>`;
    expect(codeOf(svg(fork + '<use href="#p"/>'.repeat(1000)))).toBe('drawing-too-many-parts');
  });

  it('for depth, of elements or of copies', quick, () => {
    expect(codeOf(`<svg>${'<g>'.repeat(1_000_000)}`)).toBe('drawing-unreadable');
    const chain = many(1000, (i) => `<g id="g${String(i)}"><use href="#g${String(i + 1)}"/></g>`);
    expect(codeOf(svg(`<defs>${chain}</defs><use href="#g0"/>`))).toBe('drawing-unreadable');
  });

  it('for sheer number, of elements or of points', quick, () => {
    expect(codeOf(svg('<g/>'.repeat(600_000)))).toBe('drawing-too-many-parts');
    expect(codeOf(svg(`<path d="M0 0${'h1h-1'.repeat(1_250_000)}"/>`))).toBe(
      'drawing-too-many-points',
    );
    expect(codeOf(svg(`<path d="M0 0${'z'.repeat(5_000_000)}"/>`))).toBe('none');
    const round = '<circle r="90000"/>'.repeat(3000);
    expect(codeOf(svg(round))).toBe('drawing-too-many-points');
  });

  it('for absurd numbers, wherever they stand', quick, () => {
    for (const body of [
      '<path d="M0 0L1e300 0"/>',
      '<path d="M0 0L1e999 0"/>',
      '<path d="M0 0C1e300 0 0 1e300 1 1"/>',
      '<path d="M0 0A1e300 1e300 0 1 1 1 1"/>',
      '<path d="M0 0A1e200 1e-200 0 1 1 1e6 1"/>',
      '<circle r="1e30"/>',
      '<rect width="1e308" height="1"/>',
      '<g transform="scale(1e308)"><g transform="scale(1e308)"><path d="M0 0h1"/></g></g>',
      '<g transform="matrix(1e308 1e308 1e308 1e308 0 0)"><path d="M0 0L5-5"/></g>',
      '<g transform="skewX(90)"><path d="M0 0v9"/></g>',
      '<svg viewBox="0 0 1e-300 1e-300"><path d="M0 0h1"/></svg>',
    ])
      expect([body, codeOf(svg(body))]).toEqual([body, 'drawing-number-absurd']);
    expect(
      codeOf('<svg width="1e300mm" height="1e300mm" viewBox="0 0 1 1"><path d="M0 0h1"/></svg>'),
    ).toBe('drawing-number-absurd');
  });
});

describe('hostile text costs no more than its length', () => {
  it.each(longFiles)('$what', quick, ({ text: make }) => {
    expect(typeof readToolpath(make()).ok).toBe('boolean');
  });
});

/** Whatever was read lies on a bed and is a number. */
const expectSound = (outcome: Outcome<Toolpath>): void => {
  if (!outcome.ok) {
    expect(outcome.problem.code).toMatch(/^(drawing|gcode)-/);
    return;
  }
  for (const { points } of outcome.value.lines) {
    expect(points.length).toBeGreaterThan(1);
    expect(points.flat().every((mm) => Math.abs(mm) <= 100_000)).toBe(true);
  }
};

describe('no nonsense is read as more than it is', () => {
  const figure = fc.oneof(
    fc.constantFrom('0', '1', '-1', '.5', '1e3', '1e300', '-0', '1.', '5%', '3mm', 'NaN', '', '99'),
    fc.integer({ min: -200, max: 200 }).map(String),
  );
  const list = fc.array(figure, { maxLength: 8 }).map((figures) => figures.join(' '));
  const data = fc
    .array(fc.tuple(fc.constantFrom(...Array.from('MLHVCSQTAZmlhvcsqtaz!,')), list), {
      maxLength: 8,
    })
    .map((parts) => `M1 1${parts.flat().join('')}`);
  const transform = fc
    .tuple(fc.constantFrom('matrix', 'translate', 'scale', 'rotate', 'skewX', 'odd'), list)
    .map(([name, figures]) => `${name}(${figures})`);
  const id = fc.constantFrom('a', 'b', 'c');
  const attribute = fc.oneof(
    fc.tuple(
      fc.constantFrom('x', 'y', 'width', 'height', 'rx', 'ry', 'r', 'cx', 'cy', 'x1', 'y2'),
      figure,
    ),
    fc.tuple(fc.constant('d'), data),
    fc.tuple(fc.constantFrom('points', 'viewBox'), list),
    fc.tuple(fc.constant('transform'), transform),
    fc.tuple(fc.constantFrom('id', 'class'), id),
    fc.tuple(
      fc.constantFrom('href', 'xlink:href'),
      id.map((name) => `#${name}`),
    ),
    fc.tuple(
      fc.constantFrom('display', 'visibility', 'stroke', 'fill', 'opacity'),
      fc.constantFrom('none', 'hidden', 'visible', '0', 'red', '#12', 'url(#a)'),
    ),
    fc.tuple(
      fc.constant('style'),
      fc.constantFrom(
        'display:none',
        'stroke:;fill',
        'opacity:0!important',
        'transform:scale(2px)',
      ),
    ),
    fc.tuple(fc.constant('preserveAspectRatio'), fc.constantFrom('none', 'xMinYMax slice', 'x')),
  );
  const name = fc.constantFrom(
    'g',
    'path',
    'rect',
    'circle',
    'ellipse',
    'line',
    'polygon',
    'polyline',
    'use',
    'symbol',
    'svg',
    'defs',
    'switch',
    'text',
    'image',
    'style',
    'title',
    'a',
    'own:thing',
  );
  const elementOf = (children: fc.Arbitrary<string>): fc.Arbitrary<string> =>
    fc
      .tuple(
        name,
        fc.uniqueArray(attribute, { selector: ([key]) => key, maxLength: 5 }),
        fc.array(children, { maxLength: 3 }),
      )
      .map(([tag, attributes, inner]) => {
        const said = attributes.map(([key, value]) => ` ${key}="${value}"`).join('');
        return `<${tag}${said}>${inner.join('')}</${tag}>`;
      });
  const element = elementOf(elementOf(elementOf(fc.constantFrom('', 'words', '.a{fill:red}'))));

  it('as SVG of any elements', () => {
    fc.assert(
      fc.property(fc.array(element, { maxLength: 6 }), (elements) => {
        expectSound(readToolpath(svg(elements.join(''))));
      }),
      { numRuns: 1000 },
    );
  });

  it('as files of all kinds, cut short or with a few signs changed', () => {
    const whole = [
      svg(
        '<defs><g id="a"><path d="M0 0C1 1 2 2 3 0"/></g></defs><use href="#a" transform="rotate(30)"/><style>path{stroke:red}</style>',
      ),
      '0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\n0\n90\n2\n70\n1\n10\n0\n20\n0\n42\n1\n10\n5\n20\n5\n0\nENDSEC\n0\nEOF\n',
      'G21 G90\nM3 S100\nG1 X5 Y5 F600\nG2 X9 Y9 I2 J2\nG4 P1\nM5\nM2\n',
    ];
    const change = fc.tuple(fc.nat(), fc.string({ maxLength: 3 }));
    fc.assert(
      fc.property(
        fc.constantFrom(...whole),
        fc.array(change, { maxLength: 4 }),
        fc.nat(),
        (text, changes, cut) => {
          let changed = text;
          for (const [at, put] of changes) {
            const where = at % changed.length;
            changed = changed.slice(0, where) + put + changed.slice(where + 1);
          }
          expectSound(readToolpath(changed));
          expectSound(readToolpath(changed.slice(0, cut % changed.length)));
        },
      ),
      { numRuns: 1000 },
    );
  });
});
