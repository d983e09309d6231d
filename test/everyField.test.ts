import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import ts from 'typescript';
import { afterEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { Outcome } from '../src/core/problem.ts';
import { inchUnits, metricUnits } from '../src/core/units/unitPreference.ts';
import { bedTestShape } from '../src/formats/saved/bedTest.ts';
import { cardShape } from '../src/formats/saved/card.ts';
import { label, lengthMm, note, passes, thicknessMm } from '../src/formats/saved/bounds.ts';
import { combShape } from '../src/formats/kerfFile.ts';
import { focusRampShape, focusTestShape } from '../src/formats/saved/focusTest.ts';
import { mostOnCard } from '../src/formats/saved/limits.ts';
import { gcodeDialectShape } from '../src/formats/saved/gcodeDialect.ts';
import { bedShape, machineShape } from '../src/formats/saved/machine.ts';
import { lineSpacingMm } from '../src/formats/saved/markTest.ts';
import { meteringShape } from '../src/formats/saved/metering.ts';
import { airShape, settingShape } from '../src/formats/saved/setting.ts';
import { startedOrderShape } from '../src/formats/saved/startedOrder.ts';
import { stockShape } from '../src/formats/saved/stock.ts';
import { promiseShape } from '../src/formats/saved/study.ts';
import { countsShape, habitShape } from '../src/formats/saved/tally.ts';
import { cardRequestShape } from '../src/wire/card.ts';
import { compareBody } from '../src/wire/compare.ts';
import { problemInWords } from '../src/words/words.ts';
import { showUnits } from '../src/words/texts.ts';
import { readList } from '../src/web/parts/quantity/listReader.ts';
import { readLine } from '../src/web/parts/quantity/readLine.ts';
import { readNote } from '../src/web/parts/quantity/readNote.ts';
import * as readers from '../src/web/parts/quantity/readers.ts';
import { readSettingLines } from '../src/web/screens/describe/lines.ts';
import { emptyFocusDraft, readingsIn } from '../src/web/screens/focus/focusDraft.ts';
import { readOwnLines } from '../src/web/screens/machine/ownLines.ts';
import { readTubeLines } from '../src/web/screens/machine/tubeLines.ts';
import { costAssumptionsShape } from '../src/web/state/costAssumptions.ts';

afterEach(() => showUnits(metricUnits));

const web = join(import.meta.dirname, '..', 'src', 'web');

type Reader = (text: string) => Outcome<unknown>;

/** A field of a form: what reads it, and as what it is stored. */
interface FormField {
  readonly read: Reader;
  readonly stored: z.ZodType;
}

const field = (read: Reader, stored: z.ZodType): FormField => ({ read, stored });
const counted = (least: number, most: number, stored: z.ZodType) =>
  field(readers.readCount(least, most), stored);
/** A line of words: emptied, it says nothing, and nothing is sent of it. */
const line = (stored: z.ZodType) => field(readLine, z.literal('').or(stored));
/** What is worked out on the page alone, of any size. */
const here = z.number().nonnegative();

const { shape: machine } = machineShape;
const { shape: bed } = bedShape;
const { shape: metering } = meteringShape;
const { shape: setting } = settingShape;
const { shape: order } = startedOrderShape;
const { shape: counts } = countsShape;
const { shape: costs } = costAssumptionsShape;
const { shape: ramp } = focusRampShape;
const [, jump] = machine.motion.unwrap().shape.corner.options;
const [slowest, fastest] = machine.speedRangeMmPerS.def.items;
const [, widthRead] = focusTestShape.shape.readings.options;
const motion = machine.motion.unwrap().shape;
const reading = metering.readings.element.shape;

const size = field(readers.readSize, lengthMm);
const cutSpeed = (stored: z.ZodType) => field(readers.readCutSpeed, stored);
const cutPower = (stored: z.ZodType) => field(readers.readCutPower, stored);
const speedOfSetting = cutSpeed(setting.speedMmPerS);
const powerOfSetting = cutPower(setting.powerPct);
const time = field(readers.readDuration, z.number().positive());
const thicknesses = field(readList(readers.readThickness), stockShape.shape.thicknessReadingsMm);
const widths: Reader = (text) =>
  readingsIn({ ...emptyFocusDraft, kind: 'widths', widths: text }, []);

/**
 * Every field of the page: where it stands, its name there, and how it is read; several where one part draws several. A new
 * field is missing here until it has said what it is stored as.
 */
const fields: Readonly<Record<string, readonly FormField[]>> = {
  'parts/answer/CostTable label parse': [
    field(readers.readFigure, costs.perHour),
    field(readers.readFigure, costs.tubePrice),
    field(readers.readTubeHours, costs.tubeHoursAtRated),
    field(readers.readExponent, costs.lifeExponent),
    field(readers.readFigure, costs.sheetPerPart),
    field(readers.readFigure, costs.knifeSeconds),
  ],
  'parts/answer/OrderPart label readOrderParts': [field(readers.readOrderParts, order.parts)],
  'parts/answer/PromiseQuestion words.partLength readSize': [
    field(readers.readSize, promiseShape.shape.partLengthMm),
  ],
  'parts/board/BoardForm sheetText.batch': [line(stockShape.shape.batch)],
  'parts/board/BoardForm words.sheet': [line(stockShape.shape.sheet)],
  'parts/habit/HabitForm words.power readCutPower': [cutPower(habitShape.shape.powerPct)],
  'parts/habit/HabitForm words.speed readCutSpeed': [cutSpeed(habitShape.shape.speedMmPerS)],
  'parts/material/MaterialField label': [line(stockShape.shape.material)],
  'parts/note/NoteOf label': [field(readNote, z.literal('').or(note)), line(order.name)],
  'parts/quantity/AirField words.pressure readPressure': [
    field(readers.readPressure, airShape.options[2].shape.kPa),
  ],
  'parts/quantity/SpeedAndPower labels.power readCutPower': [powerOfSetting],
  'parts/quantity/SpeedAndPower labels.speed readCutSpeed': [speedOfSetting],
  'parts/strength/StrengthQuestion words.watts readWatts': [
    field(readers.readWatts, machine.nominalW),
  ],
  'parts/tally/TallyCounts label 0 most': [counted(0, 100_000, counts.out)],
  'parts/tally/TallyForm words.batch': [line(counts.batch)],
  'parts/tally/TallyForm words.length readSize': [field(readers.readSize, counts.partLengthMm)],
  'parts/measuredTime/MeasuredTime words.ask(time) readDuration': [time],
  'screens/aside/AsideScreen words.findSheet': [line(z.string().max(200))],
  'screens/bed/OtherSheets words.findSheet': [line(z.string().max(200))],
  'screens/book/BookScreen words.search': [line(z.string().max(200))],
  'screens/card/CardWishForm words.atSpeed readCutSpeed': [
    cutSpeed(cardRequestShape.shape.speedMmPerS),
  ],
  'screens/card/CardWishForm words.each 1 mostCellsEach': [
    counted(1, 24, cardRequestShape.shape.cellsEach),
  ],
  'screens/card/CardWishForm words.power readCutPower': [cutPower(cardRequestShape.shape.powerPct)],
  'screens/card/CardWishForm words.settings 2 20': [
    counted(2, 20, cardRequestShape.shape.settingsAtMost),
  ],
  'screens/card/EntriesForm words.entries 3 strips': [
    counted(3, 30, cardRequestShape.shape.entriesAtMost),
  ],
  'screens/card/MakingForm label readSize': [
    field(readers.readSize, cardShape.shape.sizeMm),
    field(readers.readSize, cardShape.shape.widthMm),
    field(readers.readSize, cardShape.shape.heightMm),
  ],
  'screens/compare/DraftForm words.nameOne': [line(label)],
  'screens/compare/DraftForm words.nameOther': [line(label)],
  'screens/compare/DraftForm words.tell 1 30': [counted(1, 30, compareBody.shape.tellPct)],
  'screens/compare/DraftForm words.worth 0 20': [counted(0, 20, compareBody.shape.worthPct)],
  'screens/corners/CornersForm label readSize': [
    field(readers.readSize, bedTestShape.shape.bed.shape.widthMm),
    field(readers.readSize, bedTestShape.shape.bed.shape.heightMm),
    field(readers.readSize, cardShape.shape.sizeMm),
    size,
  ],
  'screens/corners/CornersForm words.cellsEach 2 24': [counted(2, 24, z.int().positive())],
  'screens/describe/CellsForm words.cutLength readSize': [
    field(readers.readSize, cardShape.shape.shapeLengthMm),
  ],
  'screens/describe/CellsForm words.each 1 12': [counted(1, 12, cardRequestShape.shape.cellsEach)],
  'screens/describe/CellsForm words.list': [
    field(readSettingLines, z.array(settingShape).max(mostOnCard.rungs)),
  ],
  'screens/describe/CellsForm words.powers readPowers': [
    field(readList(readers.readCutPower), z.array(setting.powerPct)),
  ],
  'screens/describe/CellsForm words.size readSize': [
    field(readers.readSize, cardShape.shape.sizeMm),
  ],
  'screens/describe/CellsForm words.speeds readSpeeds': [
    field(readList(readers.readCutSpeed), z.array(setting.speedMmPerS)),
  ],
  'screens/describe/DescribeScreen words.thickness readThickness': [
    field(readers.readThickness, stockShape.shape.nominalThicknessMm),
  ],
  'screens/focus/DrawRamp words.stripThickness readThickness': [
    field(readers.readThickness, thicknessMm),
  ],
  'screens/focus/FocusSays words.thickness readThickness': [
    field(readers.readThickness, stockShape.shape.nominalThicknessMm),
  ],
  'screens/focus/RampForm label readLength': [
    field(readers.readLength, ramp.lengthMm),
    field(readers.readLength, ramp.blockMm),
    field(readers.readLength, ramp.nozzleGapMm),
  ],
  'screens/focus/RampForm words.gauge readLength': [
    field(readers.readLength, focusTestShape.shape.gaugeMm),
  ],
  'screens/focus/RampReading label readLength': [field(readers.readLength, ramp.lengthMm)],
  'screens/focus/RampReading words.widths': [
    field(widths, focusTestShape.shape.readings.or(z.undefined())),
    field(readers.readLineWidth, widthRead.shape.widths.element.shape.widthMm),
  ],
  'screens/kerf/CombPart label readSize': [size],
  'screens/kerf/CombReading label readSize': [
    field(readers.readSize, combShape.shape.nominalMm),
    field(readers.readSize, combShape.shape.nominalMm),
  ],
  'screens/kerf/KerfScreen words.batch': [line(stockShape.shape.batch)],
  'screens/kerf/SlotPart words.thickness readThickness': [
    field(readers.readThickness, thicknessMm),
  ],
  'screens/machine/GcodeForm label': [field(readOwnLines, gcodeDialectShape.shape.opening)],
  'screens/machine/GcodeForm words.fullPower 1 1_000_000': [
    counted(1, 1_000_000, gcodeDialectShape.shape.sAtFullPower),
  ],
  'screens/machine/MachineForm label parse': [
    field(readers.readSize, bed.widthMm),
    field(readers.readSize, bed.heightMm),
    field(readers.readGap, bed.gapMm),
  ],
  'screens/machine/MachineForm words.fastest readSpeedThat((value) => value > least, least)': [
    cutSpeed(fastest),
  ],
  'screens/machine/MachineForm words.maxPower readCutPower': [cutPower(machine.maxPowerPct)],
  'screens/machine/MachineForm words.name': [line(machine.name)],
  'screens/machine/MachineForm words.points': [field(readTubeLines, machine.tubePoints)],
  'screens/machine/MachineForm words.rated readRated': [
    field(readers.readRated, machine.ratedCurrentMa),
  ],
  'screens/machine/MachineForm words.slowest readSpeedThat((value) => value < most, most)': [
    cutSpeed(slowest),
  ],
  'screens/machine/MachineForm words.strength readWatts': [
    field(readers.readWatts, machine.nominalW),
  ],
  'screens/machine/OwnMachines words.newName': [line(machine.name)],
  'screens/marks/EvenShadesPart words.lightness(rungLetter(i)) readLightness': [
    field(readers.readLightness, z.number().min(0).max(100)),
  ],
  'screens/marks/MarkForm words.lineSpacing readLineSpacing': [
    field(readers.readLineSpacing, lineSpacingMm),
  ],
  'screens/marks/MarkForm words.note': [line(note)],
  'screens/meter/MeterConverter words.convertCurrent readCurrent': [
    field(readers.readCurrent, here),
  ],
  'screens/meter/MeterConverter words.convertRated readShare': [field(readers.readShare, here)],
  'screens/meter/MeterConverter words.convertSetting readPower': [field(readers.readPower, here)],
  'screens/meter/MeterScreen words.rated readRated': [
    field(readers.readRated, metering.ratedCurrentMa),
  ],
  'screens/meter/MeterScreen words.water readTemperature': [
    field(readers.readTemperature, metering.waterC),
  ],
  'screens/meter/MeterTable words.own readPowerUpTo(most)': [
    field(readers.readPowerUpTo(80), reading.powerPct.max(80)),
  ],
  'screens/meter/MeterTable words.readingAt(powerPct, round) readCurrent': [
    field(readers.readCurrent, reading.currentMa),
  ],
  'screens/motion/MotionForm label parse': [
    cutSpeed(motion.travelSpeedMmPerS),
    field(readers.readJump, jump.shape.xMmPerS),
    field(readers.readJump, jump.shape.yMmPerS),
  ],
  'screens/motion/MotionForm words.acceleration readAcceleration': [
    field(readers.readAcceleration, motion.accelerationMmPerS2),
  ],
  'screens/motion/MotionForm words.deviation readDeviation': [
    field(readers.readDeviation, motion.corner.options[0].shape.deviationMm),
  ],
  'screens/motion/MotionForm words.rampStart readJump': [
    field(readers.readJump, machine.powerRampStartMmPerS),
  ],
  'screens/motion/TimedJobs words.took(i + 1) readDuration': [time],
  'screens/order/CountSheet words.cutAt readCutSpeed': [speedOfSetting],
  'screens/order/CountSheet words.cutParts 1 5000': [counted(1, 5000, order.partsPerSheet)],
  'screens/order/StartOrder label readOrderParts': [
    field(readers.readOrderParts, order.parts),
    field(readers.readOrderParts, order.partsPerSheet),
  ],
  'screens/order/StartOrder noteText.of.job': [line(order.name)],
  'screens/order/StartOrder words.accept readNotOut': [
    field(readers.readNotOut, order.acceptNotOutOf100),
  ],
  'screens/order/StartOrder words.costFields[name] readHoldUp': [
    field(readers.readHoldUp, order.costS.shape.knife),
  ],
  'screens/order/StartOrder words.length readSize': [field(readers.readSize, order.partLengthMm)],
  'screens/order/StartOrder words.power readCutPower': [cutPower(order.powerPct)],
  'screens/pair/PairScreen words.code': [line(z.string())],
  'screens/pair/PairScreen words.name': [line(label)],
  'screens/pair/PhonesLetIn words.newName': [line(label)],
  'screens/proof/ProofSetting words.minPower readPower': [
    field(readers.readPower, setting.minPowerPct),
  ],
  'screens/proof/ProofSetting words.passes 1 9': [counted(1, 9, passes)],
  'screens/proof/ProofSetting words.startSpeed readJump': [
    field(readers.readJump, machine.powerRampStartMmPerS),
  ],
  'screens/sheet/RunScreen tallyText.length readSize': [
    field(readers.readSize, counts.partLengthMm),
  ],
  'screens/sheet/RunScreen words.thickness readThickness': [
    field(readers.readThickness, stockShape.shape.nominalThicknessMm),
  ],
  'screens/people/NameHere words.name': [line(label)],
  'screens/sheet/StockForm words.batch': [line(stockShape.shape.batch)],
  'screens/sheet/StockForm words.measured readLengths': [thicknesses],
  'screens/sheet/StockForm words.thickness readThickness': [
    field(readers.readThickness, stockShape.shape.nominalThicknessMm),
  ],
  'screens/study/CardPays words.parts 1 100_000': [counted(1, 100_000, z.int().positive())],
  'screens/watch/StripForm words.batch': [line(stockShape.shape.batch)],
  'screens/watch/StripForm words.thickness readLengths': [thicknesses],
};

/** The parts that a person types into. */
const typed = new Set(['QuantityField', 'TypedField', 'CountField', 'TextLine', 'LinesField']);
/** The boxes of the browser, which stand in those parts alone; and what is ticked, picked or chosen, which the page itself words. */
const boxes: Readonly<Record<string, string>> = {
  'parts/file/FilePick input': 'a file',
  'parts/quantity/CountField input': 'CountField',
  'parts/quantity/LinesField textarea': 'LinesField',
  'parts/quantity/TextLine input': 'TextLine',
  'parts/quantity/TickField input': 'a tick',
  'parts/photo/PhotoPick input': 'a file',
  'parts/quantity/TypedField input': 'TypedField',
  'screens/aside/AsideScreen select': 'one of what there is',
  'screens/compare/PiecesForm select': 'one of what there is',
  'screens/focus/RampReading input': 'a tick',
  'screens/machine/MachineChanges input': 'a day, which is refused where it is yet to come',
  'screens/meter/CompareMeterings select': 'one of what there is',
  'screens/proof/CutGroups input': 'a tick',
};

interface Found {
  readonly fields: readonly string[];
  readonly boxes: readonly string[];
}

/** Every field in the source of the page, as `file name reader`. */
const found = ((): Found => {
  const seen: string[] = [];
  const bare: string[] = [];
  const sources = readdirSync(web, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.tsx') && !file.endsWith('.test.tsx'))
    .map((file) => file.replaceAll('\\', '/'));
  for (const file of sources) {
    const text = readFileSync(join(web, file), 'utf8');
    const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
    const place = file.replace(/\.tsx$/, '');
    const visit = (node: ts.Node): void => {
      if (ts.isJsxSelfClosingElement(node) || ts.isJsxOpeningElement(node)) {
        const tag = node.tagName.getText(source);
        if (['input', 'textarea', 'select'].includes(tag)) bare.push(`${place} ${tag}`);
        // QuantityField is made of TypedField.
        if (typed.has(tag) && !place.startsWith('parts/quantity/QuantityField')) {
          const said = new Map(
            node.attributes.properties.flatMap((one) =>
              ts.isJsxAttribute(one)
                ? [[one.name.getText(source), one.initializer?.getText(source) ?? ''] as const]
                : [],
            ),
          );
          const parts = ['label', 'parse', 'least', 'most'].flatMap((name) => {
            const value = said.get(name);
            return value === undefined ? [] : [value.replace(/^\{|\}$/g, '')];
          });
          seen.push([place, ...parts].join(' '));
        }
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return { fields: seen.sort(), boxes: bare.sort() };
})();

/** What people type, and what they slip into. */
const slips = [
  '',
  ' ',
  '0',
  '-3',
  '−3',
  '0.00001',
  '999999999',
  '1e9',
  'many',
  '1.2.3',
  '1,2,3',
  '3,5',
  '2.5',
  '1,200',
  '12 mm',
  '12 kg',
  '12 %',
  '130 %',
  '12 mm/s',
  '12 mA',
  '4:10',
  '12\t13',
  '14 mm/s 30 % x0',
  '14 mm/s 30 % x99',
  '20 % 5 mA\n20 % 6 mA',
  '30 mm 0.4 mm\n40 mm 900 mm',
  'M3 S100',
  'x'.repeat(400),
  'x'.repeat(4001),
  Array.from({ length: 250 }, (_, i) => `${String(i / 4 + 1)} ${String(i / 4 + 1)}`).join('\n'),
];

const everyOne = Object.entries(fields).flatMap(([name, several]) =>
  several.map((one, i) => [several.length > 1 ? `${name} (${String(i + 1)})` : name, one] as const),
);

describe('every field of the page', () => {
  it('is named here with what it is stored as', () => {
    expect([...new Set(found.fields)]).toEqual(Object.keys(fields).sort());
    expect(found.fields.length).toBeGreaterThan(70);
    expect([...new Set(found.boxes)]).toEqual(Object.keys(boxes).sort());
  });

  it('is read by a reader of the one list, each of which stands beside what it reads', () => {
    const named = readFileSync(import.meta.filename, 'utf8');
    expect(Object.keys(readers).filter((name) => !named.includes(`readers.${name}`))).toEqual([]);
  });
});

describe.each(everyOne)('%s', (_name, { read, stored }) => {
  it('takes only what is taken where it is stored, in either system of units', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          { weight: 3, arbitrary: fc.constantFrom(...slips) },
          fc.double({ min: 0, max: 1e7, noNaN: true }).map((n) => String(Number(n.toPrecision(6)))),
          fc.string({ maxLength: 12 }),
        ),
        fc.constantFrom(metricUnits, inchUnits),
        (text, units) => {
          showUnits(units);
          const outcome = read(text);
          if (outcome.ok) {
            const { error } = stored.safeParse(
              typeof outcome.value === 'string' ? outcome.value.trim() : outcome.value,
            );
            expect(error?.issues, JSON.stringify(text)).toBeUndefined();
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('says what is wrong and what to type, wherever it refuses', () => {
    const refused = slips.flatMap((text) => {
      const outcome = read(text);
      return outcome.ok ? [] : [problemInWords(outcome.problem)];
    });
    expect(refused.length).toBeGreaterThan(0);
    for (const { message, remedy } of refused) {
      expect(message).toMatch(/\w/);
      expect(remedy).toMatch(/\w/);
    }
  });
});
