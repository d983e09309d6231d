import { useState } from 'react';
import type { PartsCounted } from '../../../core/running/sheetCounted.ts';
import type { StartedOrder } from '../../../core/study/startedOrder.ts';
import { speedWords, orderRunText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { goToRefusedField } from '../../parts/form/refusedField.ts';
import { More } from '../../parts/more/More.tsx';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readCutSpeed } from '../../parts/quantity/readers.ts';
import { useDraft } from '../../state/useDraft.ts';
import { NestTaps } from './NestTaps.tsx';
import { noneTapped, tapped, type Grade, type Tapped } from './tapped.ts';
import { Said } from '../../parts/said/Said.tsx';

export interface CountSheetProps {
  readonly order: StartedOrder;
  /** Of the sheet, from 1. */
  readonly number: number;
  /** As planned, the main one first. */
  readonly settings: readonly {
    readonly powerPct: number;
    readonly speedMmPerS: number;
    readonly parts: number;
  }[];
  readonly onCount: (counted: readonly PartsCounted[], isAsPlanned: boolean) => void;
}

interface Draft {
  /** Nothing was said yet but that not all came out. */
  readonly isOpen: boolean;
  readonly taps: Tapped;
  /** By setting, where there is no picture. */
  readonly counts: readonly Trouble[];
  readonly speedMmPerS?: number;
  readonly parts?: number;
}

type Trouble = Pick<PartsCounted, 'hangs' | 'stays' | 'spoilt'>;

const noDraft: Draft = { isOpen: false, taps: noneTapped, counts: [] };

const noTrouble: Trouble = { hangs: 0, stays: 0, spoilt: 0 };

/** One sheet counted in two taps: all out; or what was not, and done. */
export const CountSheet = ({ order, number, settings, onCount }: CountSheetProps) => {
  const [draft, setDraft, sent] = useDraft<Draft>({
    name: `count.${order.id}.${String(number)}`,
    initial: noDraft,
    of: settings,
  });
  const [isSent, setSent] = useState(false);
  const { nest } = order;
  const cut = settings.map((one, i) =>
    i > 0
      ? one
      : {
          ...one,
          speedMmPerS: draft.speedMmPerS ?? one.speedMmPerS,
          parts: draft.parts ?? one.parts,
        },
  );
  const parts = cut.reduce((sum, one) => sum + one.parts, 0);
  const onNest = nest !== undefined && nest.parts.length === parts ? nest : undefined;
  const faster = onNest?.apart?.slice(0, parts - (cut[0]?.parts ?? parts)) ?? [];
  const troubleOf = (i: number): Trouble => {
    if (onNest === undefined) return draft.counts[i] ?? noTrouble;
    return tapped(draft.taps, onNest.parts.length, (part) => faster.includes(part) === i > 0);
  };
  const counted = cut.map((one, i): PartsCounted => ({ ...one, ...troubleOf(i) }));
  const isWrong = counted.some((one) => outOf(one) < 0);
  const out = counted.reduce((sum, one) => sum + outOf(one), 0);
  const isAsPlanned = draft.speedMmPerS === undefined;
  const save = (said: readonly PartsCounted[]): void => {
    if (isSent) return;
    setSent(true);
    sent();
    onCount(said, isAsPlanned);
  };
  const tap = (part: number, grade: Grade): void =>
    setDraft({ ...draft, isOpen: true, taps: { ...draft.taps, [part]: grade } });
  const change = (i: number, trouble: Partial<Trouble>): void => {
    const counts = cut.map((_, k) =>
      k === i ? { ...troubleOf(k), ...trouble } : (draft.counts[k] ?? noTrouble),
    );
    setDraft({ ...draft, isOpen: true, counts });
  };
  return (
    <section className="order-count" aria-label={words.count}>
      {draft.isOpen ? null : (
        <div className="order-taps">
          <button
            type="button"
            className="order-all"
            disabled={isSent}
            onClick={({ currentTarget }) => {
              if (!goToRefusedField(currentTarget.closest('section')))
                save(cut.map((one) => ({ ...one, ...noTrouble })));
            }}
          >
            {words.allOut(parts)}
          </button>
          <button
            type="button"
            className="order-some"
            onClick={() => setDraft({ ...draft, isOpen: true })}
          >
            {words.notAll}
          </button>
        </div>
      )}
      {draft.isOpen ? (
        <div className="stack">
          {onNest === undefined ? (
            cut.map((one, i) => (
              <Counters
                key={one.speedMmPerS}
                title={cut.length > 1 ? words.allOutOf(one.parts, speedWords(one.speedMmPerS)) : ''}
                trouble={troubleOf(i)}
                most={one.parts}
                onChange={(trouble) => change(i, trouble)}
              />
            ))
          ) : (
            <NestTaps nest={onNest} taps={draft.taps} faster={faster} onTap={tap} />
          )}
          <Said what="wrong" className="unseen">
            {isWrong ? words.tooMany : ''}
          </Said>
          <div className="order-taps">
            <button
              type="button"
              className="order-all"
              disabled={isWrong || isSent}
              onClick={({ currentTarget }) => {
                if (!goToRefusedField(currentTarget.closest('section'))) save(counted);
              }}
            >
              {isWrong ? words.tooMany : words.save(out, parts)}
            </button>
            <Action kind="quiet" onPress={() => setDraft(noDraft)}>
              {words.leave}
            </Action>
          </div>
        </div>
      ) : null}
      <More title={words.cutOther}>
        <div className="field-row">
          <QuantityField
            label={words.cutAt}
            value={cut[0]?.speedMmPerS}
            show={speedWords}
            parse={readCutSpeed}
            onChange={(speedMmPerS) => {
              if (speedMmPerS !== undefined) setDraft({ ...draft, speedMmPerS });
            }}
          />
          <CountField
            label={words.cutParts}
            value={cut[0]?.parts ?? 1}
            least={1}
            most={5000}
            onChange={(some) => setDraft({ ...draft, parts: some })}
          />
        </div>
      </More>
    </section>
  );
};

const outOf = ({ parts, hangs, stays, spoilt }: PartsCounted): number =>
  parts - hangs - stays - spoilt;

interface CountersProps {
  /** Which of several settings; empty where there is one. */
  readonly title: string;
  readonly trouble: Trouble;
  readonly most: number;
  readonly onChange: (trouble: Partial<Trouble>) => void;
}

/** Three counters for a gloved thumb: a tap on the name adds one. */
const Counters = ({ title, trouble, most, onChange }: CountersProps) => (
  <fieldset className="order-counters">
    {title === '' ? null : <legend>{title}</legend>}
    {(['hangs', 'stays', 'spoilt'] as const).map((name) => (
      <div key={name} className="order-counter">
        <button
          type="button"
          className="order-step"
          disabled={trouble[name] === 0}
          aria-label={`${words.grades[name]} −1`}
          onClick={() => onChange({ [name]: Math.max(0, trouble[name] - 1) })}
        >
          −
        </button>
        <button
          type="button"
          className="order-add"
          disabled={trouble[name] >= most}
          onClick={() => onChange({ [name]: trouble[name] + 1 })}
        >
          <span className="order-tally figure-text">{trouble[name]}</span>
          <span>{words.grades[name]}</span>
        </button>
      </div>
    ))}
  </fieldset>
);
