import { areWordsOf, cellWords } from '../card/settingWords.ts';
import { isSetting, fileSetting, fileSettingWords } from './fileSetting.ts';
import { fault, remark, type Finding, type PathLine, type Toolpath } from './toolpath.ts';

/** Holds what a file calls its lines against what it does: names of layers, comments, and the colours that stand for them. */
export const checkLabels = (toolpath: Toolpath): readonly Finding[] => [
  ...checkNames(toolpath),
  ...checkSharedColours(toolpath),
];

/** A program says in comments what it means, and in F and S what it does. One finding a cell or section. */
const checkNames = (toolpath: Toolpath): readonly Finding[] => {
  const told = new Set<string>();
  return toolpath.lines.flatMap((line): readonly Finding[] => {
    const name = line.cell?.id ?? line.layer;
    if (name === undefined || told.has(name)) return [];
    const found = differs(toolpath, line);
    if (found !== undefined) told.add(name);
    return found === undefined ? [] : [found];
  });
};

const differs = (toolpath: Toolpath, line: PathLine): Finding | undefined => {
  const { cell, spelt } = line;
  if (cell?.words !== undefined && spelt !== undefined && !areWordsOf(cell.words, spelt.setting)) {
    return fault('check-label-differs', {
      cell: cell.id,
      label: cell.words,
      file: cellWords(spelt.setting),
      where: line.where,
    });
  }
  if (line.modal === undefined || spelt === undefined) return undefined;
  const does = fileSetting(toolpath, line);
  if (does === undefined || isSetting(does, spelt.setting)) return undefined;
  return fault('check-label-differs', {
    ...(cell === undefined ? {} : { cell: cell.id }),
    label: cell?.words ?? line.layer ?? '',
    file: fileSettingWords(does, line, spelt.setting),
    where: line.where,
  });
};

/** Two layers of one colour are one entry in a control program that goes by colour, and get one setting. */
const checkSharedColours = ({ kind, lines }: Toolpath): readonly Finding[] => {
  if (kind === 'gcode') return [];
  const byColour = new Map<string, PathLine>();
  for (const line of lines) {
    if (line.colour === undefined || line.spelt === undefined) continue;
    const first = byColour.get(line.colour);
    if (first?.spelt === undefined) byColour.set(line.colour, line);
    else if (cellWords(first.spelt.setting) !== cellWords(line.spelt.setting)) {
      const params = { one: first.layer ?? '', other: line.layer ?? '', colour: line.colour };
      return [fault('check-colour-shared', params)];
    }
  }
  const unnamed = lines.find(({ spelt }) => spelt === undefined);
  return unnamed !== undefined && lines.some(({ spelt }) => spelt !== undefined)
    ? [remark('check-layer-unnamed', { layer: unnamed.layer ?? '' })]
    : [];
};
