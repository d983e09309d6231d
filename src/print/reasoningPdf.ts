import { actsOfSettings, type SettingAct } from '../core/card/cardActs.ts';
import type { Explanation, Learnt, SpeedExplained } from '../core/explain/explanation.ts';
import { whyPicture } from '../core/explain/whyPicture.ts';
import type { CutStudy } from '../core/cutmodel/cutStudy.ts';
import { standingOfCut } from '../core/standing/standingOfCut.ts';
import {
  standingText,
  reasoningText as words,
  whySentences,
  whyText,
  type WhySaid,
} from '../words/texts.ts';
import { glowsOn } from '../core/stock/glowsOn.ts';
import { cautionLines } from '../words/cautionLines.ts';
import { problemInWords } from '../words/words.ts';
import { newPdf } from './newPdf.ts';
import { faint, heading, innerWidth, page, rule, write } from './sheetOfPaper.ts';
import { drawWhyPicture } from './whyPicturePdf.ts';

interface ReasoningOptions {
  /** What is cut, as the user calls it: `3 mm birch plywood`. */
  readonly stock: string;
  readonly version: string;
  /** ISO 8601, UTC. Equal reasons of equal time are equal bytes. */
  readonly madeAt: string;
}

const gutter = 18;
const half = (innerWidth - gutter) / 2;
const small = 7.9;

/** The whole reasoning behind an answer on one page (A4): question, cells, model, priors, posterior, decision, sensitivity. */
export const reasoningPdf = (
  study: CutStudy,
  explanation: Explanation,
  { stock, version, madeAt }: ReasoningOptions,
): Promise<Uint8Array> => {
  const { speed, answer } = explanation;
  const title =
    speed === undefined
      ? words.titleOfNone
      : words.title(speed.speedMmPerS, speed.powerPct, answer.recommended?.air);
  return newPdf({ title, madeAt }, (pdf) => {
    let y = write(pdf, title, page.margin, page.margin - 10, { font: 'strong', size: 22 });
    y = write(pdf, words.question(study.promise, stock), page.margin, y + 1, { size: 9.5 });
    const { kind, why, isGuess } = standingOfCut(study, answer);
    if (kind !== 'holds') {
      const mark = isGuess ? standingText.guess : standingText.kinds[kind];
      const { message, remedy } = problemInWords(why);
      y = write(pdf, `${mark}. ${message} ${remedy}`, page.margin, y + 2, {
        font: 'strong',
        size: 9.5,
      });
    }
    const said = whySentences(explanation, study.cells);
    if (speed === undefined || said === null) {
      const { reason } = answer;
      const why = reason === undefined ? whyText.noAnswer : problemInWords(reason).message;
      y = write(pdf, why, page.margin, y + 6, { font: 'strong' });
    } else {
      y = write(pdf, said.held, page.margin, y + 5, { font: 'strong', size: 10.5 });
      for (const line of cautionLines(actsOf(study, speed)))
        y = write(pdf, line, page.margin, y + 2, { font: 'strong', size: 8.6 });
      y = drawWhyPicture(pdf, whyPicture(study, speed), {
        x: page.margin,
        y: y + 2,
        width: innerWidth,
      });
      const note = `${words.cells} ${words.rings}`;
      y = write(pdf, note, page.margin, y, { size: small, colour: faint });
      y = drawSaid(pdf, said, y + 6);
    }
    const left = column(pdf, page.margin, y + 5);
    const right = column(pdf, page.margin + half + gutter, y + 5);
    drawModel(left, study, explanation);
    if (speed !== undefined) drawDecision(right, explanation, speed);
    drawLimits(right, study);
    const foot = page.height - page.margin - 12;
    pdf
      .lineWidth(0.5)
      .strokeColor(rule)
      .moveTo(page.margin, foot - 4)
      .lineTo(page.margin + innerWidth, foot - 4)
      .stroke();
    write(pdf, words.foot(version, madeAt), page.margin, foot, { size: 7, colour: faint });
  });
};

/** What the setting asks to be watched: it stands on this page. */
const actsOf = ({ cells, stock }: CutStudy, speed: SpeedExplained): readonly SettingAct[] => {
  const air = cells.at(-1)?.air;
  return actsOfSettings({
    settings: [{ speedMmPerS: speed.speedMmPerS, ...(air === undefined ? {} : { air }) }],
    thicknessMm: stock.thicknessMm,
    glows: glowsOn(stock.material),
  });
};

/** Three columns of plain sentences. */
const drawSaid = (pdf: PDFKit.PDFDocument, said: WhySaid, top: number): number => {
  const width = (innerWidth - 2 * gutter) / 3;
  const parts = [
    [words.carries, said.carries],
    [words.changes, said.changes],
    [words.expectation, [...said.expectation, ...said.earlier]],
  ] as const;
  return Math.max(
    ...parts.map(([title, lines], i) => {
      const x = page.margin + i * (width + gutter);
      let y = heading(pdf, title, x, top, width);
      for (const line of lines) y = write(pdf, line, x, y, { size: 8.6, width }) + 2;
      return y;
    }),
  );
};

/** A column of the page that is written into from the top. */
interface Column {
  readonly title: (text: string) => void;
  readonly line: (text: string) => void;
  readonly row: (cells: readonly string[], shares: readonly number[], isHead?: boolean) => void;
}

const column = (pdf: PDFKit.PDFDocument, x: number, top: number): Column => {
  let y = top;
  return {
    title: (text) => {
      y = heading(pdf, text, x, y + 2, half);
    },
    line: (text) => {
      y = write(pdf, text, x, y, { size: small, width: half }) + 1.5;
    },
    row: (cells, shares, isHead = false) => {
      let at = x;
      cells.forEach((cell, i) => {
        const width = half * (shares[i] ?? 0);
        write(pdf, cell, at, y, {
          size: small,
          width,
          align: i === 0 ? 'left' : 'right',
          ...(isHead ? { colour: faint } : {}),
        });
        at += width;
      });
      y += small + 3.2;
    },
  };
};

const drawModel = (
  { title, line, row }: Column,
  study: CutStudy,
  { learnt, calculation, answer }: Explanation,
): void => {
  title(words.model);
  for (const text of words.modelLines) line(text);
  title(words.data);
  line(dataOf(study));
  title(words.learntTable);
  const shares = [0.42, 0.21, 0.21, 0.16];
  row([words.quantity, words.before, words.after, words.learnt], shares, true);
  for (const one of learnt) row(learntRow(one), shares);
  line(whyText.inLn);
  title(words.convergence);
  const { linkProbabilities: links } = answer.convergence;
  const shown = (['normal', 'logistic', 'student3'] as const).map((name) =>
    words.link(name, links[name]),
  );
  line(
    words.converged(
      answer.convergence.points,
      answer.convergence.effectivePoints,
      calculation.paretoShape,
      shown,
    ),
  );
};

const learntRow = ({
  name,
  priorMean,
  priorSd,
  mean,
  sd,
  learntPct,
}: Learnt): readonly string[] => [
  whyText.quantities[name],
  whyText.figure(priorMean, priorSd),
  whyText.figure(mean, sd),
  whyText.learntShare(learntPct),
];

const dataOf = ({ cells, tallies, habit, history = [], beliefs }: CutStudy): string => {
  const count = (grade: 'out' | 'hangs' | 'stays'): number =>
    cells.filter((cell) => cell.grade === grade && cell.spoilt === undefined).length;
  const parts = tallies.reduce((sum, t) => sum + t.out + t.hangs + t.stays + t.spoilt, 0);
  return words.dataLine(count('out'), count('hangs'), count('stays'), [
    ...(parts > 0 ? [words.tallies(parts)] : []),
    ...(habit === undefined ? [] : [words.habit]),
    ...(history.length > 0 ? [words.history(history.length)] : []),
    ...(beliefs === undefined ? [] : [words.olderSheets]),
  ]);
};

const drawDecision = (
  { title, line, row }: Column,
  { answer }: Explanation,
  speed: SpeedExplained,
): void => {
  title(words.decision);
  const sure = answer.recommended?.sureAtSpeedPct ?? 0;
  line(words.decided(speed.holdingMmPerS, speed.speedMmPerS, speed.powerPct, sure));
  for (const [name, step] of [
    ['surer', answer.oneStepSurer],
    ['faster', answer.oneStepFaster],
  ] as const) {
    if (step === undefined) continue;
    line(words.step(name, step.speedMmPerS, step.outOf100Mean, step.sureOfPromisePct));
  }
  title(words.sensitivity);
  const shares = [0.62, 0.2, 0.18];
  row([whyText.assumption, whyText.becomes, whyText.moves], shares, true);
  for (const { name, speedMmPerS, shiftPct } of speed.whatIf) {
    row([whyText.whatIf[name], whyText.orNone(speedMmPerS), whyText.shift(shiftPct)], shares);
  }
  if (speed.untried.length > 0) line(whyText.untried(speed.untried));
};

const drawLimits = ({ title, line }: Column, { promise }: CutStudy): void => {
  title(words.notClaimed);
  for (const text of words.notClaimedLines(promise.for)) line(text);
};
