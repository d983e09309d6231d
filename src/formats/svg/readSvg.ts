import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { parseLayerName } from '../../core/card/settingWords.ts';
import {
  fault,
  remark,
  type Finding,
  type PathLine,
  type Toolpath,
} from '../../core/filecheck/toolpath.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { readingLimits } from '../readingLimits.ts';
import { flattenPath, type FlatPath } from './flattenPath.ts';
import { svgFrame, type SvgFrame } from './svgLength.ts';
import { pathDataOf } from './svgShape.ts';
import { refuseDrawing } from '../refuseDrawing.ts';

/**
 * A drawing in SVG as lines in mm, in the order of the file: what a control program would find in it. Groups are layers,
 * by title, label or id. Text, pictures and copies by `use` are noticed, not read. Refuses hostile files: declared
 * entities, endless size or depth, absurd numbers. O(points).
 */
export const readSvg = (text: string): Outcome<Toolpath> => {
  const reader = new Reader();
  const parser = new SaxesParser();
  let problem: Outcome<never> | undefined;
  parser.on('doctype', (doctype) => {
    if (/<!ENTITY/i.test(doctype)) problem ??= refuseDrawing('drawing-declares-entities');
  });
  parser.on('opentag', (tag) => {
    problem ??= reader.open(tag);
  });
  parser.on('closetag', () => reader.close());
  parser.on('text', (words) => reader.text(words));
  try {
    for (let i = 0; i < text.length && problem === undefined; i += chunk) {
      parser.write(text.slice(i, i + chunk));
    }
    if (problem === undefined) parser.close();
  } catch (error) {
    const detail = error instanceof Error ? error.message : 'no reason given';
    problem ??= refuseDrawing('drawing-unreadable', {
      kind: 'SVG',
      detail: detail.slice(0, 200).replace(/\.$/, ''),
    });
  }
  return problem ?? reader.toolpath();
};

const chunk = 65_536;

/** Groups that hold what is not drawn where it stands. */
const unseen = new Set(['defs', 'clipPath', 'mask', 'pattern', 'marker', 'symbol', 'metadata']);
const notRead = new Set(['text', 'use', 'image', 'foreignObject', 'switch']);

/** One open element: what it hands down to what is in it. */
interface Frame {
  readonly name: string;
  readonly id?: string;
  readonly label?: string;
  title?: string;
  readonly transforms: readonly string[];
  readonly colour?: string;
  readonly hidden: boolean;
  /** The groups around, nearest first. */
  readonly groups: readonly Frame[];
}

interface Found {
  readonly flat: FlatPath['lines'][number];
  readonly frame: Frame;
}

class Reader {
  readonly #open: Frame[] = [];
  readonly #found: Found[] = [];
  readonly #noticed: Finding[] = [];
  readonly #unread = new Map<string, number>();
  #page: SvgFrame | undefined;
  #points = 0;

  open({ name, attributes }: SaxesTagPlain): Outcome<never> | undefined {
    const local = name.slice(name.indexOf(':') + 1);
    const parent = this.#open.at(-1);
    const frame = frameOf(local, attributes, parent);
    this.#open.push(frame);
    if (this.#open.length > readingLimits.depth)
      return refuseDrawing('drawing-unreadable', {
        kind: 'SVG',
        detail: 'groups within groups without end',
      });
    if (parent === undefined) {
      if (local !== 'svg')
        return refuseDrawing('drawing-unreadable', {
          kind: 'SVG',
          detail: `begins with <${local}>`,
        });
      this.#page = svgFrame(attributes);
      if (this.#page.assumed) this.#noticed.push(remark('check-units-assumed'));
      return undefined;
    }
    if (frame.hidden) return undefined;
    if (notRead.has(local)) this.#unread.set(local, (this.#unread.get(local) ?? 0) + 1);
    const data = pathDataOf(local, attributes);
    return data === undefined || this.#page === undefined
      ? undefined
      : this.#draw(data, frame, this.#page);
  }

  close(): void {
    this.#open.pop();
  }

  text(words: string): void {
    const [frame, parent] = [this.#open.at(-1), this.#open.at(-2)];
    if (frame?.name === 'title' && parent !== undefined)
      parent.title = `${parent.title ?? ''}${words}`.trim();
  }

  #draw(data: string, frame: Frame, page: SvgFrame): Outcome<never> | undefined {
    const { lines, broken } = flattenPath(data, frame.transforms, page.matrix);
    if (broken !== undefined) {
      this.#noticed.push(
        fault('check-part-not-read', { what: `path ${frame.id ?? ''}`.trim(), count: 1 }),
      );
    }
    for (const flat of lines) {
      this.#points += flat.length;
      if (this.#points > readingLimits.points)
        return refuseDrawing('drawing-too-many-points', { points: this.#points });
      const absurd = flat.find(
        (point) => !point.every((mm) => Math.abs(mm) <= readingLimits.farthestMm),
      );
      if (absurd !== undefined)
        return refuseDrawing('drawing-number-absurd', { where: this.#found.length + 1 });
      this.#found.push({ flat, frame });
    }
    return undefined;
  }

  toolpath(): Outcome<Toolpath> {
    if (this.#page === undefined)
      return refuseDrawing('drawing-unreadable', { kind: 'SVG', detail: 'no svg element' });
    const { widthMm, heightMm } = this.#page;
    const unread = [...this.#unread].map(([what, count]) =>
      remark('check-part-not-read', { what, count }),
    );
    return done({
      kind: 'svg',
      lines: this.#found.map(({ flat, frame }, i) => pathLine(flat, frame, i + 1)),
      page: { widthMm, heightMm },
      travels: [],
      noticed: [...this.#noticed, ...unread, ...contradictions(this.#found)],
    });
  }
}

const frameOf = (
  name: string,
  attributes: Readonly<Record<string, string>>,
  parent: Frame | undefined,
): Frame => {
  const style = attributes['style'] ?? '';
  const own = attributes['stroke'] ?? /(?:^|;)\s*stroke\s*:\s*([^;]+)/.exec(style)?.[1]?.trim();
  const colour = own ?? parent?.colour;
  const id = attributes['id'];
  const label = Object.entries(attributes).find(
    ([key]) => key === 'label' || key.endsWith(':label'),
  )?.[1];
  const transform = attributes['transform'];
  const notShown =
    unseen.has(name) ||
    /(?:^|;)\s*display\s*:\s*none/.test(style) ||
    attributes['display'] === 'none';
  return {
    name,
    ...(id === undefined ? {} : { id }),
    ...(label === undefined ? {} : { label }),
    transforms: [...(transform === undefined ? [] : [transform]), ...(parent?.transforms ?? [])],
    ...(colour === undefined ? {} : { colour: colour.toLowerCase() }),
    hidden: (parent?.hidden ?? false) || notShown,
    groups:
      parent === undefined ? [] : parent.name === 'g' ? [parent, ...parent.groups] : parent.groups,
  };
};

const namesOf = ({ title, label, id }: Frame): readonly string[] =>
  [title, label, id].filter((name) => name !== undefined && name !== '').map(String);

/** The nearest group whose name spells a setting; else the nearest that has a name. */
const layerOf = (frame: Frame): Pick<PathLine, 'layer' | 'spelt'> => {
  for (const group of frame.groups) {
    for (const layer of namesOf(group)) {
      const spelt = parseLayerName(layer);
      if (spelt !== undefined) return { layer, spelt };
    }
  }
  const [layer] = frame.groups.flatMap(namesOf);
  return layer === undefined ? {} : { layer };
};

const pathLine = (points: PathLine['points'], frame: Frame, where: number): PathLine => {
  const cell = /^cell-([A-Z]{1,2}\d{1,3})$/.exec(frame.id ?? '')?.[1];
  const { colour } = frame;
  return {
    points,
    passes: 1,
    ...layerOf(frame),
    ...(cell === undefined ? {} : { cell: { id: cell } }),
    ...(colour === undefined || colour === 'none' ? {} : { colour }),
    where,
  };
};

/** A group that spells one setting in its title and another in its id: control programs show one or the other. */
const contradictions = (found: readonly Found[]): readonly Finding[] => {
  const groups = new Set(found.flatMap(({ frame }) => frame.groups));
  return [...groups].flatMap((group) => {
    const spelt = namesOf(group)
      .map((name) => name.replaceAll('_', ' '))
      .filter((name) => parseLayerName(name) !== undefined);
    const [one, other] = new Set(spelt);
    return one === undefined || other === undefined
      ? []
      : [fault('check-layer-differs', { one, other })];
  });
};
