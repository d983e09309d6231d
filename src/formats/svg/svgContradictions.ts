import { parseLayerName } from '../../core/card/settingWords.ts';
import { fault, type Finding } from '../../core/filecheck/toolpath.ts';
import { namesOf } from './svgOwn.ts';
import type { SvgNode } from './svgTree.ts';

/** Groups that spell one setting in the title and another in the id: control programs show one or the other. */
export const contradictions = (groups: Iterable<SvgNode>): readonly Finding[] =>
  [...groups].flatMap((group) => {
    const spelt = namesOf(group)
      .map((name) => name.replaceAll('_', ' '))
      .filter((name) => parseLayerName(name) !== undefined);
    const [one, other] = new Set(spelt);
    return one === undefined || other === undefined
      ? []
      : [fault('check-layer-differs', { one, other })];
  });
