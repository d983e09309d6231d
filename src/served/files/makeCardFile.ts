import type { Model } from '../../app/sums/model.ts';
import type { Card } from '../../core/card/card.ts';
import type { BelievedChangeover } from '../../core/card/cardRequest.ts';
import type { JobSheet } from '../../core/card/jobSheet.ts';
import { overdriveRemarks } from '../../core/card/overdriveRemarks.ts';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { FitAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import type { Machine } from '../../core/machine/machine.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { materialRemarks } from '../../core/stock/acceptMaterial.ts';
import { glowsOn } from '../../core/stock/glowsOn.ts';
import type { UnitPreference } from '../../core/units/unitPreference.ts';
import type { Study } from '../../core/study/study.ts';
import { believedForCard } from '../../core/study/believedForCard.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import type { CardFileKind } from '../../formats/machineFiles.ts';
import { madeFile, type MadeFile } from './madeFile.ts';
import type { Printer } from './printer.ts';
import { inventedText } from '../../words/texts.ts';
import { problemInWords } from '../../words/words.ts';
import { cardCautions } from './cardCautions.ts';

/** A card with all that its files are made of and held to. */
export interface CardToFile {
  readonly card: Card;
  readonly machine: Machine;
  readonly believed: BelievedChangeover;
  /** What is cut, as the user calls it; its thickness stands with the card. */
  readonly material: string;
  /** Of the example workshop: every file of it says so. */
  readonly isExample?: boolean;
  readonly dialect?: GcodeDialect;
  /** The page beside the machine, and in what units it speaks. */
  readonly sheet: JobSheet;
  readonly units?: UnitPreference;
}

/** Makes the file of one kind, its cautions with it; what the check of files faults is not made. */
export const makeCardFile = (
  given: CardToFile,
  kind: CardFileKind,
  printer: Printer,
): Promise<Outcome<MadeFile>> => {
  const { card, machine, believed, dialect, isExample = false } = given;
  return madeFile(
    kind,
    {
      of: card,
      machine,
      believed,
      notes: notesOf(given),
      ...(dialect === undefined ? {} : { dialect }),
    },
    {
      pdf: () => jobSheetFor(given, printer),
      json: async () => {
        const { writeCardFile } = await import('../../formats/cardFile.ts');
        return done(writeCardFile({ ...card, ...(isExample ? { isExample } : {}) }));
      },
    },
  );
};

/** Overdrive first, in words, then the cautions. */
const notesOf = ({ card, machine, sheet, isExample }: CardToFile): readonly string[] => [
  ...(isExample === true ? [inventedText.note] : []),
  ...overdriveRemarks(
    card.rungs.map(({ setting }) => setting),
    machine,
  ).map((remark) => problemInWords(remark).message),
  ...cardCautions(sheet),
];

const jobSheetFor = (
  { material, sheet, isExample = false, units }: CardToFile,
  printer: Printer,
): Promise<Outcome<Uint8Array>> =>
  printer.jobSheet(sheet, {
    stock: inventedText.stock(material, isExample),
    ...(units === undefined ? {} : { units }),
  });

/** A card of a sheet, and what its files are to say and speak. */
interface CardOfSheet extends Pick<CardToFile, 'isExample' | 'dialect' | 'units'> {
  readonly card: Card;
  readonly cut: CutStudy;
  /** What changed is told against the card before it. */
  readonly before?: Card;
}

/** What the files of a card are made of, whoever asks for them: the command and the server alike. */
export const cardToFile = async (
  model: Model,
  { card, cut, before, ...more }: CardOfSheet,
): Promise<Outcome<CardToFile>> => {
  const { jobSheet } = await import('../../core/card/jobSheet.ts');
  const known = await answerForCard(model, cut, card);
  if (!known.ok) return known;
  const { machine, stock } = cut;
  return done({
    ...more,
    card,
    machine,
    believed: believedForCard(cut, card, known.value),
    material: stock.material,
    sheet: jobSheet(card, {
      ...(before === undefined ? {} : { before }),
      ofMaterial: materialRemarks(stock),
      glows: glowsOn(stock.material),
      machine,
    }),
  });
};

/** The file of one kind of a card of a study that is kept; absent units: mm and mm/s. */
export const storedCardFile = async (
  { study, card }: { readonly study: Study; readonly card: Card },
  { kind, units }: { readonly kind: CardFileKind; readonly units?: UnitPreference },
  { model, printer }: { readonly model: Model; readonly printer: Printer },
): Promise<Outcome<MadeFile>> => {
  const before = study.cards[study.cards.findIndex(({ code }) => code === card.code) - 1];
  const given = await cardToFile(model, {
    card,
    cut: toCutStudy(study),
    isExample: study.isExample,
    ...(before === undefined ? {} : { before }),
    ...(units === undefined ? {} : { units }),
  });
  return given.ok ? makeCardFile(given.value, kind, printer) : given;
};

/** What is known of a sheet whose card was only described; a designed one says itself what it was designed for. */
const answerForCard = async (
  model: Model,
  cut: CutStudy,
  { believed }: Card,
): Promise<Outcome<FitAnswer | undefined>> =>
  believed === undefined ? model.ask('answerToDesignBy', { cut, earlier: [] }) : done(undefined);
