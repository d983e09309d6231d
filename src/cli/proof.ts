import type { ProofOnDrawing } from '../app/drawing/proveOnDrawing.ts';
import type { Setting } from '../core/machine/setting.ts';
import { done, refused, type Outcome } from '../core/problem.ts';
import { settingShape } from '../formats/saved/setting.ts';
import { parseCutStudy } from '../formats/studyFile.ts';
import { cornersSentences, kindSentence, placeSentence, promiseSentences } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { askModel } from './askModel.ts';
import { printOutcome, type ExitCode } from './output.ts';
import { readDrawingText } from './readDrawing.ts';
import { readJsonFile } from './readJsonFile.ts';

interface ProofOptions {
  readonly study: string;
  /** `14 mm/s 30%`, with `corner 20%` and `x2` where they are not usual; `min 20%` is read as before. */
  readonly setting?: string;
  /** Layers or colours that are not cut through. */
  readonly leaveOut?: readonly string[];
}

/**
 * `proof FILE --study study.json [--setting WORDS] [--leave-out NAME…]`: what a setting will do to a drawing. Without a
 * setting one step surer than what the study recommends. It never says that a drawing is safe to cut.
 */
export const runProof = async (file: string, options: ProofOptions): Promise<ExitCode> =>
  printOutcome(await prove(file, options), (proof) => shown(file, proof));

const prove = async (file: string, options: ProofOptions): Promise<Outcome<ProofOnDrawing>> => {
  const setting = options.setting === undefined ? done(undefined) : settingOf(options.setting);
  if (!setting.ok) return setting;
  const study = await readJsonFile(options.study, parseCutStudy);
  if (!study.ok) return study;
  const drawing = await readDrawingText(file);
  if (!drawing.ok) return drawing;
  return askModel('proveOnDrawing', {
    text: drawing.value,
    study: study.value,
    ...(setting.value === undefined ? {} : { setting: setting.value }),
    leaveOut: options.leaveOut ?? [],
  });
};

const settingPattern =
  /^(?<speed>\d+(?:\.\d+)?) ?mm\/s,? (?<power>\d+(?:\.\d+)?) ?%(?:,? (?:corner|min) ?(?<min>\d+(?:\.\d+)?) ?%)?(?:,? x(?<passes>\d+))?$/;

const settingOf = (text: string): Outcome<Setting> => {
  const found = settingPattern.exec(text.trim())?.groups;
  const read = settingShape.safeParse({
    speedMmPerS: Number(found?.['speed']),
    powerPct: Number(found?.['power']),
    ...(found?.['min'] === undefined ? {} : { minPowerPct: Number(found['min']) }),
    passes: Number(found?.['passes'] ?? '1'),
  });
  return found !== undefined && read.success && read.data.powerPct > 0
    ? done(read.data)
    : refused('command-misused', {
        detail: `--setting is “${text}”, not like “14 mm/s 30% corner 20% x2”`,
      });
};

const shown = (file: string, proof: ProofOnDrawing): object => {
  const { setting, places, promise, noPromise, corners, limits } = proof;
  const remarks = [...proof.ofMaterial, ...proof.remarks, ...proof.noticed];
  return {
    version: 1,
    file,
    kind: proof.kind,
    setting,
    drawing: proof.drawing,
    groups: proof.groups,
    motion: proof.motion,
    ...mapNumbers(proof.time),
    limits,
    places: {
      slowed: places.slowed,
      withVerdict: places.withVerdict,
      groups: places.groups.map((group) => ({
        ...group,
        sentence: placeSentence(group, setting.speedMmPerS),
      })),
      groupsLeftOut: places.groupsLeftOut,
    },
    neverAtSpeed: proof.neverAtSpeed ?? null,
    promise:
      promise === undefined
        ? null
        : {
            ...promise,
            sentences: [
              ...promiseSentences(promise),
              ...promise.kinds.map((kind) => kindSentence(kind, promise.outOf100)),
            ],
          },
    ...(noPromise === undefined ? {} : { reason: problemInWords(noPromise) }),
    corners:
      corners === undefined
        ? null
        : { ...corners, sentences: cornersSentences(corners, setting.powerPct) },
    cornersBy: proof.cornersBy,
    remarks: remarks.map((remark) => ({
      ...problemInWords(remark),
      ...('at' in remark ? { at: remark.at } : {}),
    })),
  };
};

const mapNumbers = (time: ProofOnDrawing['time']): object =>
  Object.fromEntries(Object.entries(time).map(([name, s]) => [name, Number(s.toFixed(2))]));
