import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { metricUnits, type UnitPreference } from '../../core/units/unitPreference.ts';
import type { FileToMake } from '../../formats/fileToMake.ts';
import { rampFileKinds, type RampFileKind } from '../../formats/machineFiles.ts';
import { cautionLines } from '../../words/cautionLines.ts';
import type { PageBeside } from '../../words/shape/pageBeside.ts';
import { inUnits } from '../../words/texts.ts';
import { madeFile, type MadeFile } from './madeFile.ts';
import type { Printer } from './printer.ts';

/** Something drawn for the machine, and the page that lies beside it. */
export interface ToFile extends Pick<FileToMake, 'machine' | 'believed'> {
  /** What its files are called, their ending apart. */
  readonly name: string;
  /** In the units in which is spoken. */
  readonly page: () => PageBeside;
  /** What a program is told of it, besides its cautions. */
  readonly told: () => object;
}

/** A kind of thing to draw: how it is asked for in a file, and what is made of what was asked. */
export interface RequestKind<Asked> {
  readonly read: (
    json: unknown,
  ) => Outcome<{ readonly asked: Asked; readonly gcode: GcodeDialect }>;
  readonly make: (asked: Asked) => Outcome<ToFile>;
}

interface ToFileOptions {
  readonly printer: Pick<Printer, 'pageBeside'>;
  /** Absent: the machine's own. */
  readonly dialect?: GcodeDialect;
  readonly units?: UnitPreference;
}

/** The cautions that go with it, wherever there is room for words. */
export const cautionsOf = ({
  acts,
  ofMaterial,
}: Pick<PageBeside, 'acts' | 'ofMaterial'>): readonly string[] => cautionLines(acts, ofMaterial);

/** The file of one kind, its cautions with it; what the check of files faults is not made. */
export const fileOf = (
  { name, machine, believed, page: pageOf }: ToFile,
  kind: RampFileKind,
  { printer, dialect, units = metricUnits }: ToFileOptions,
): Promise<Outcome<MadeFile>> => {
  const { page, notes } = inUnits(units, () => {
    const page = pageOf();
    return { page, notes: [page.about, page.minded, ...cautionsOf(page)] };
  });
  return madeFile(
    kind,
    {
      of: { title: page.title, plainTitle: name.replaceAll('-', ' '), drawing: page.drawing },
      machine,
      ...(believed === undefined ? {} : { believed }),
      ...(dialect === undefined ? {} : { dialect }),
      notes,
    },
    { pdf: () => printer.pageBeside(page, { units }) },
  );
};

/** Its files of every kind, under their names; all of them, or the first refusal. */
export const filesOf = async (
  made: ToFile,
  options: ToFileOptions,
): Promise<Outcome<readonly { readonly name: string; readonly content: MadeFile['body'] }[]>> => {
  const files = [];
  for (const kind of rampFileKinds) {
    const file = await fileOf(made, kind, options);
    if (!file.ok) return file;
    files.push({ name: `${made.name}.${kind}`, content: file.value.body });
  }
  return done(files);
};
