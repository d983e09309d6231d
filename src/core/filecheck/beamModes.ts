import { fault, type Finding, type PathLine } from './toolpath.ts';

/** A line that belongs to a cell, and how long it is there. */
interface CellLine {
  readonly cell: string;
  readonly line: PathLine;
  readonly mm: number;
}

/**
 * Whether all cells are cut in one way: steady power (M3), or power that follows speed (M4), which leaves less in corners.
 * One finding for each cell that differs from most.
 */
export const beamModesOf = (lines: readonly CellLine[]): readonly Finding[] => {
  const mmOf = (mode: string): number =>
    lines.reduce((sum, { line, mm }) => sum + (line.modal?.beam === mode ? mm : 0), 0);
  const usual = mmOf('constant') >= mmOf('speed-following') ? 'constant' : 'speed-following';
  const seen = new Set<string>();
  return lines.flatMap(({ cell, line }) => {
    if (line.modal === undefined || line.modal.beam === usual || seen.has(cell)) return [];
    seen.add(cell);
    const [mode, others] = usual === 'constant' ? ['M4', 'M3'] : ['M3', 'M4'];
    return [fault('check-cell-beam-mode', { cell, mode, others, where: line.where })];
  });
};
