import { dxfFormat } from './dxf/dxfFormat.ts';
import type { MachineFileFormat } from './fileToMake.ts';
import { gcodeFormat } from './gcode/gcodeFormat.ts';
import { svgFormat } from './svg/svgFormat.ts';

/** Every kind of file that a machine, or the program before it, takes. One more is its own file and a line here. */
export const machineFiles = {
  svg: svgFormat,
  dxf: dxfFormat,
  gcode: gcodeFormat,
} as const satisfies Readonly<Record<string, MachineFileFormat>>;

export type MachineFileKind = keyof typeof machineFiles;

const kindsOf = <Kind extends string>(list: Readonly<Record<Kind, unknown>>): readonly Kind[] => {
  const kinds: Kind[] = [];
  for (const kind in list) kinds.push(kind);
  return kinds;
};

export const machineFileKinds = kindsOf(machineFiles);

export const isMachineFileKind = (kind: string): kind is MachineFileKind =>
  Object.hasOwn(machineFiles, kind);

/** What a focus ramp, and what a card, is given away as: for the machine, for the printer, and for other programs. */
export const rampFileKinds = [...machineFileKinds, 'pdf'] as const;
export const cardFileKinds = [...rampFileKinds, 'json'] as const;

export type RampFileKind = (typeof rampFileKinds)[number];
export type CardFileKind = (typeof cardFileKinds)[number];

/** What a field for files takes. */
export const machineFileEndings = machineFileKinds
  .flatMap((kind) => machineFiles[kind].endings.map((ending) => `.${ending}`))
  .join(',');
