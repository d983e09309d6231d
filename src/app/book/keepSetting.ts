import { saidBy, type Author } from '../../core/author.ts';
import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import type { SettingChange } from '../../core/book/settingChange.ts';
import { firingProblem } from '../../core/card/firingLimits.ts';
import { powerLimit } from '../../core/tube/deliveredPower.ts';
import type { Machine } from '../../core/machine/machine.ts';
import type { Setting } from '../../core/machine/setting.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { readCard } from '../../core/reading/readCard.ts';
import type { PromiseWish } from '../../core/reading/promise.ts';
import { halfReadCard } from '../../core/standing/evidenceFrom.ts';
import { stockThicknessMm } from '../../core/stock/stockThickness.ts';
import { promiseOf } from '../../core/study/promiseOf.ts';
import type { Study } from '../../core/study/study.ts';
import type { Aim } from '../../core/cutmodel/aims.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import { believedChangeover } from '../../core/study/believedChangeover.ts';
import { settingHeldBack } from '../../core/study/settingHeldBack.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { namedMaterial } from '../../core/stock/namedMaterial.ts';
import { readKept, withStanding, type EntryStanding } from '../shared/entryStanding.ts';
import { freeCode } from '../shared/freeCode.ts';
import { historyFor, type EarlierSheetsWish } from '../shared/history.ts';
import type { Model } from '../sums/model.ts';
import type { AskingPorts, ReadSession } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';
import { sameValue } from '../../core/sameValue.ts';

export interface KeepSetting extends EarlierSheetsWish {
  readonly id?: string;
  readonly studyId: string;
  readonly setting: Setting;
  readonly keptAt?: string;
  /** Absent: the study's. */
  readonly aim?: Aim;
  readonly promise?: PromiseWish;
  /** Needed where the setting draws more than the tube's rated current. */
  readonly personsChoice?: string;
  readonly note?: string;
  /** Needed where a card was read in part: that nobody looked at the rest. */
  readonly rest?: 'not-looked-at';
}

/**
 * Keeps a setting in the book with all that it holds for and where it came from. What the model says of it is computed
 * here, from the study as it stands and what earlier sheets taught: nobody can write a promise into the book. The same setting sent twice under one id
 * is kept once. Refuses: `study-not-found`, a refused material, `power-above-machine`, `fires-beyond-speeds`,
 * `fires-above-ceiling`, `overdrive-needs-reason`, `rest-not-said`, `no-forecast-to-keep`, `entry-id-taken`, what `Model` refuses.
 */
export const keepSetting = async (
  ports: AskingPorts & Author,
  asked: KeepSetting,
): Promise<Outcome<EntryStanding>> => {
  const { store, model } = ports;
  const begun = await store.read((session) => beginning(session, asked));
  if (!begun.ok) return begun;
  const entry =
    'known' in begun.value ? done(begun.value.known) : await keep(ports, asked, begun.value);
  if (!entry.ok) return entry;
  const kept = await store.read((session) => readKept(session, entry.value));
  return done(await withStanding(model, kept));
};

interface ToKeep {
  readonly study: Study;
  readonly earlier: readonly EarlierSheet[];
}

/** The entry of this id where it is there, else what it is worked out from: the study as it stands now. */
const beginning = async (
  session: ReadSession,
  asked: KeepSetting,
): Promise<Outcome<ToKeep | { readonly known: ProvenSetting }>> => {
  const known = await knownAs(session, asked);
  if (known !== undefined) return known.ok ? done({ known: known.value }) : known;
  const found = await findStudy(session, asked.studyId);
  if (!found.ok) return found;
  const { study } = found.value;
  const half = asked.rest === undefined ? halfReadCard(study) : undefined;
  if (half !== undefined) return refused('rest-not-said', half);
  const allowed = mayKeep(study, asked);
  return allowed.ok ? done({ study, earlier: await historyFor(session, study, asked) }) : allowed;
};

const knownAs = async (
  session: ReadSession,
  asked: KeepSetting,
): Promise<Outcome<ProvenSetting> | undefined> => {
  const known = asked.id === undefined ? undefined : await session.entry(asked.id);
  if (known?.id !== asked.id || known === undefined) return undefined;
  const isSame =
    known.cameFrom.studyId === asked.studyId && sameValue(known.setting, asked.setting);
  return isSame ? done(known) : refused('entry-id-taken', { id: known.id });
};

/** What was said of the study while the forecast was made counts as said since. */
const keep = async (
  { store, clock, ids, model, ...author }: AskingPorts & Author,
  asked: KeepSetting,
  { study, earlier }: ToKeep,
): Promise<Outcome<ProvenSetting>> => {
  const now = clock.now();
  const told = await forecastOf(model, study, asked, earlier);
  if (!told.ok) return told;
  return store.change(async (session) => {
    const known = await knownAs(session, asked);
    if (known !== undefined) return known;
    if ((await session.cardsOf(study.id)) === undefined)
      return refused('study-not-found', { id: study.id });
    const worked: ProvenSetting = {
      version: 1,
      id: asked.id ?? ids.newId(),
      code: await freeCode(session, ids),
      isExample: study.isExample,
      keptAt: asked.keptAt ?? now,
      setting: asked.setting,
      aim: asked.aim ?? study.aim,
      promise: asked.promise ?? promiseOf(study),
      ...told.value,
      holdsFor: holdsFor(study),
      cameFrom: cameFrom(study),
      ...(asked.personsChoice === undefined ? {} : { personsChoice: asked.personsChoice }),
      ...(asked.note === undefined ? {} : { note: asked.note }),
    };
    const entry = saidBy(worked, author);
    await session.insertEntry(entry);
    const change: SettingChange = {
      version: 1,
      id: ids.newId(),
      at: now,
      settingId: entry.id,
      after: entry,
    };
    await session.noteChange(saidBy(change, author));
    await session.touch(study.id, clock.now());
    return done(entry);
  });
};

const mayKeep = (study: Study, { setting, personsChoice }: KeepSetting): Outcome<undefined> => {
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  const { powerPct } = setting;
  const { machine } = study;
  if (powerPct > machine.maxPowerPct)
    return refused('power-above-machine', { powerPct, mostPct: machine.maxPowerPct });
  const beyond = firingProblem('setting', setting, { machine, mayOverdrive: true });
  if (beyond !== undefined) return { ok: false, problem: beyond };
  const limitPct = ratedLimitPct(machine);
  const chosen = (personsChoice ?? '').trim() !== '';
  return limitPct !== undefined && powerPct > limitPct && !chosen
    ? refused('overdrive-needs-reason', { powerPct, limitPct: Math.floor(limitPct) })
    : done(undefined);
};

const ratedLimitPct = (machine: Machine): number | undefined => {
  const limit = powerLimit(machine);
  return limit.because === 'rated-current' ? limit.powerPct : undefined;
};

const forecastOf = async (
  model: Model,
  study: Study,
  { setting, promise }: KeepSetting,
  earlier: readonly EarlierSheet[],
): Promise<Outcome<Pick<ProvenSetting, 'outOf100Mean' | 'surePct'>>> => {
  const { powerPct, speedMmPerS } = setting;
  const cut = {
    ...toCutStudy(study),
    promise: promise ?? promiseOf(study),
    ask: { powerPct, speedMmPerS },
  };
  const { aim } = study;
  const answer = await model.ask('answerWithEarlier', { cut, aim, earlier }, study.id);
  if (!answer.ok) return answer;
  const beyond = settingHeldBack(cut, believedChangeover(cut, answer.value), setting);
  if (beyond !== undefined) return { ok: false, problem: beyond };
  const { asked } = answer.value;
  if (asked === undefined || !Number.isFinite(asked.outOf100Mean))
    return refused('no-forecast-to-keep');
  return done({ outOf100Mean: asked.outOf100Mean, surePct: asked.sureOfPromisePct });
};

const holdsFor = ({ stock, machineId, machine }: Study): ProvenSetting['holdsFor'] => ({
  machineId,
  ...(machine.name === undefined ? {} : { machine: machine.name }),
  ...namedMaterial(stock),
  nominalThicknessMm: stock.nominalThicknessMm,
  ...(stock.thicknessReadingsMm.length === 0
    ? {}
    : { measuredThicknessMm: stockThicknessMm(stock) }),
  ...(stock.batch === undefined ? {} : { batch: stock.batch }),
  ...(stock.sheet === undefined ? {} : { sheet: stock.sheet }),
});

const cameFrom = (study: Study): ProvenSetting['cameFrom'] => {
  const read = study.cards.map((card) => ({
    code: card.code,
    cells: readCard(card, study.events).cells.filter(({ reading }) => reading.kind !== 'unread'),
  }));
  return {
    studyId: study.id,
    cardCodes: read.filter(({ cells }) => cells.length > 0).map(({ code }) => code),
    cellCount: read.reduce((sum, { cells }) => sum + cells.length, 0),
    partsTallied: study.tallies.reduce((sum, t) => sum + t.out + t.hangs + t.stays + t.spoilt, 0),
    habit: study.habit !== undefined,
  };
};
