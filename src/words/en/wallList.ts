import type { Setting } from '../../core/machine/setting.ts';
import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import type { Kerf } from '../../core/kerf/kerf.ts';
import { isNotToBeCut } from '../../core/standing/isNotToBeCut.ts';
import type { KeptMark } from '../../core/marking/markTest.ts';
import { sameValue } from '../../core/sameValue.ts';
import type { Standing } from '../../core/standing/standing.ts';
import type { WallLine } from '../../core/standing/wallList.ts';
import { omit } from '../../core/omit.ts';
import { bookText } from './screens/book.ts';
import { marksText } from './screens/marks.ts';
import { standingText } from './screens/standing.ts';
import { airWords, fineLengthWords, settingWords } from './terms/figures.ts';

const settingOf = ({ entry, standing }: WallLine): Setting => standing.run ?? entry.setting;

/** What is written of a line, column by column. */
export const wallListText = {
  title: 'Settings for the wall',
  lead: 'One page of all kept settings, by machine. Print it anew when one is kept or fails.',
  pdf: 'Page (PDF)',
  empty: 'Nothing is kept yet.',
  unnamed: 'A machine without a name',
  columns: ['Sheet', 'Cut at', 'Air', 'Score', 'Engrave', 'Kerf', 'Promise', 'Kept'] as const,
  sheet: ({
    material,
    nominalThicknessMm,
    measuredThicknessMm,
    batch,
  }: ProvenSetting['holdsFor']) =>
    [
      bookText.stock(material, nominalThicknessMm, measuredThicknessMm),
      ...(batch === undefined ? [] : [bookText.batch(batch)]),
    ].join(', '),
  cut: (line: WallLine) => {
    if (isNotToBeCut(line.standing)) return standingText.notToBeCut;
    const { speedMmPerS, powerPct, minPowerPct, passes } = settingOf(line);
    return settingWords({ speedMmPerS, powerPct, minPowerPct, passes });
  },
  air: (line: WallLine) => {
    if (isNotToBeCut(line.standing)) return '';
    const said = airWords(settingOf(line).air).replace(/^, (?:air )?/, '');
    return said === '' ? 'not noted' : said;
  },
  score: (line: WallLine) => marked(line, line.marks.score),
  /** With what covers the face meanwhile. */
  engrave: (line: WallLine) => {
    const tape = line.marks.tape?.test.mark;
    const isTaped = tape?.kind === 'tape' && tape.tape !== 'none';
    return [
      marked(line, line.marks.engrave),
      ...(isTaped && !isNotToBeCut(line.standing) ? [`Tape: ${marksText.mark(tape)}`] : []),
    ]
      .filter((said) => said !== '')
      .join('. ');
  },
  kerf: (kerf: Kerf | undefined) =>
    kerf === undefined
      ? ''
      : `${fineLengthWords(kerf.kerfMm)} ± ${fineLengthWords(kerf.expandedMm)}`,
  promise: ({ entry, standing }: WallLine) => wallPromise(standing, entry.surePct),
  kept: ({ keptAt, code }: ProvenSetting) => [new Date(keptAt).toLocaleDateString(), code] as const,
  care: 'Stay with a running laser. Extinguisher within reach. Extraction on, lid shut. Local rules and the maker’s manual come first.',
  printedOn: (at: string) =>
    `Printed ${new Date(at).toLocaleDateString()}. A setting may have failed since: what the book says counts.`,
} as const;

/** Air is said of a mark where it is not that of the cut. */
const marked = (line: WallLine, kept: KeptMark | undefined): string => {
  if (kept === undefined || kept.test.mark.kind === 'tape' || isNotToBeCut(line.standing))
    return '';
  if (kept.beyond !== undefined) return marksText.notAnyMore;
  const { mark } = kept.test;
  const isAiredAlike = sameValue(mark.setting.air, settingOf(line).air);
  return marksText.mark({
    ...mark,
    setting: isAiredAlike ? omit(mark.setting, 'air') : mark.setting,
  });
};

/** No promise is shown that does not stand; what does not simply hold is said. */
const wallPromise = (standing: Standing, surePct: number): string => {
  if (isNotToBeCut(standing)) return '';
  if (standing.kind === 'failed') return standingText.kinds.failed;
  const said = bookText.promise(standing.promise.outOf100, surePct);
  return standing.kind === 'holds' ? said : `${said}. ${standingText.kinds[standing.kind]}`;
};
