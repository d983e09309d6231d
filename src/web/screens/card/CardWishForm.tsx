import { boardOf } from '../../../core/card/boardOf.ts';
import { powerLimit } from '../../../core/tube/deliveredPower.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import { sheetsCut } from '../../../core/study/sheetsCut.ts';
import type { Study } from '../../../core/study/study.ts';
import { powerWords, speedWords, cardText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { BoardForm } from '../../parts/board/BoardForm.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { More } from '../../parts/more/More.tsx';
import { CountField } from '../../parts/quantity/CountField.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readCutPower, readCutSpeed } from '../../parts/quantity/readers.ts';
import { TickField } from '../../parts/quantity/TickField.tsx';
import type { CardWish } from '../../state/designFor.ts';
import { withOptional } from '../../state/withOptional.ts';
import { newSeed } from '../../state/newId.ts';
import { RungChips } from '../study/RungChips.tsx';
import { MakingForm } from './MakingForm.tsx';

export interface CardWishFormProps {
  readonly study: Study;
  readonly wish: CardWish;
  /** Whether the settings were handed over by a comparison. */
  readonly isCompared: boolean;
  readonly onChange: (wish: CardWish) => void;
}

/** What a card takes; a comparison may want so many. */
const mostCellsEach = 24;

/** What the card is to find out, and how much may be typed; shape, marks and outline one click below. */
export const CardWishForm = ({ study, wish, isCompared, onChange }: CardWishFormProps) => {
  const change = (part: Partial<CardWish>): void => onChange({ ...wish, ...part });
  const each = (
    <CountField
      label={words.each}
      value={wish.cellsEach}
      least={1}
      most={mostCellsEach}
      onChange={(cellsEach) => change({ cellsEach })}
    />
  );
  return (
    <div className="stack">
      <Choice<CardWish['vary'] | 'said'>
        label={words.question}
        lay="list"
        value={wish.rungs === undefined ? wish.vary : 'said'}
        options={[
          ...(wish.rungs === undefined
            ? []
            : [
                { value: 'said' as const, label: isCompared ? words.comparedCard : words.nextCard },
              ]),
          ...(['speed', 'power', 'speed-and-power', 'passes', 'corners'] as const).map((value) => ({
            value,
            label: words.vary[value],
            more: words.varyMore[value],
          })),
        ]}
        onChange={(vary) => {
          if (vary === 'said') return;
          onChange({ ...withOptional(wish, 'rungs', undefined), vary });
        }}
      />
      {wish.rungs === undefined ? (
        <div className="field-row">
          <QuantityField
            label={words.power}
            value={wish.powerPct}
            show={powerWords}
            parse={readCutPower}
            onChange={(powerPct) => {
              if (powerPct !== undefined) change({ powerPct });
            }}
          />
          {wish.vary === 'power' || wish.vary === 'corners' ? (
            <QuantityField
              label={words.atSpeed}
              value={wish.speedMmPerS}
              optional
              show={speedWords}
              parse={readCutSpeed}
              onChange={(speedMmPerS) => onChange(withOptional(wish, 'speedMmPerS', speedMmPerS))}
            />
          ) : null}
          <CountField
            label={words.settings}
            value={wish.settingsAtMost ?? (wish.vary === 'speed-and-power' ? 9 : 6)}
            least={2}
            most={20}
            onChange={(settingsAtMost) => change({ settingsAtMost })}
          />
          {each}
        </div>
      ) : (
        <>
          <RungChips settings={wish.rungs} />
          <div className="field-row">{each}</div>
        </>
      )}
      {isTubeLimited(study.machine) && (wish.overdrive === true || isAboveRated(study, wish)) ? (
        <TickField
          label={words.overdrive}
          hint={words.overdriveMore}
          checked={wish.overdrive === true}
          onChange={(named) => onChange(withOptional(wish, 'overdrive', named ? true : undefined))}
        />
      ) : null}
      <BoardForm
        board={boardOf(wish)}
        before={sheetsCut(study)}
        onChange={(board) => onChange({ ...withoutBoard(wish), ...board })}
      />
      <div>
        <More title={words.more}>
          <MakingForm wish={wish} machine={study.machine} onChange={onChange} />
          <div className="actions">
            <Action kind="quiet" onPress={() => change({ seed: newSeed() })}>
              {words.shuffle}
            </Action>
          </div>
        </More>
      </div>
    </div>
  );
};

/** The tube reaches its rated current below what the machine is kept to: only then can a person name overdrive. */
const isTubeLimited = (machine: Machine): boolean =>
  powerLimit(machine).because === 'rated-current';

const isAboveRated = ({ machine }: Study, { powerPct, rungs = [] }: CardWish): boolean =>
  [powerPct, ...rungs.map((setting) => setting.powerPct)].some(
    (power) => power > powerLimit(machine).powerPct,
  );

const withoutBoard = (wish: CardWish): CardWish =>
  withOptional(withOptional(wish, 'batch', undefined), 'sheet', undefined);
