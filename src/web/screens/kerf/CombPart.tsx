import { combPlaceCounts, type CombPlaceCount } from '../../../core/kerf/combSheet.ts';
import { kerfCardDrawing, type KerfCard } from '../../../core/kerf/kerfCard.ts';
import type { Kerf } from '../../../core/kerf/kerf.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { Outcome } from '../../../core/problem.ts';
import { kerfSheetText, kerfText as words, lengthWords } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readSize } from '../../parts/quantity/readers.ts';
import { SettingField } from '../../parts/quantity/SettingField.tsx';
import { KerfCardFiles } from './KerfCardFiles.tsx';
import { KerfCardPicture } from './KerfCardPicture.tsx';
import type { KerfDraft } from './kerfDraft.ts';

export interface CombPartProps {
  readonly name: string;
  readonly draft: KerfDraft;
  readonly onChange: (part: Partial<KerfDraft>) => void;
  readonly places: CombPlaceCount;
  readonly directions: NonNullable<KerfDraft['directions']>;
  readonly card: Outcome<KerfCard>;
  readonly fileAddress: (kind: string) => string;
  /** What was kept of another batch: then one comb is enough. */
  readonly before: { readonly kerf: Kerf; readonly batch: string | undefined } | undefined;
}

/** What the comb is cut from, where, and its files. */
export const CombPart = (props: CombPartProps) => {
  const { name, draft, onChange, places, directions, card, fileAddress, before } = props;
  const side = (label: string, i: 0 | 1) => (
    <QuantityField
      label={label}
      value={draft.pieceMm[i]}
      show={lengthWords}
      parse={readSize}
      onChange={(mm) => {
        if (mm !== undefined)
          onChange({ pieceMm: i === 0 ? [mm, draft.pieceMm[1]] : [draft.pieceMm[0], mm] });
      }}
    />
  );
  const scoring: Setting | undefined = card.ok ? card.value.scoring : draft.scoring;
  return (
    <Section title={words.comb}>
      <p className="soft">{words.combMore}</p>
      {before === undefined ? null : (
        <Notice tone="say">
          <p>{words.oneIsEnough(before.kerf, before.batch)}</p>
        </Notice>
      )}
      <div className="field-row">
        {side(words.width, 0)}
        {side(words.height, 1)}
      </div>
      <Choice
        label={words.places}
        value={String(places)}
        options={combPlaceCounts.map((count) => ({
          value: String(count),
          label: words.placeCount(count),
        }))}
        onChange={(chosen) => {
          const count = combPlaceCounts.find((each) => String(each) === chosen);
          if (count !== undefined) onChange({ places: count });
        }}
      />
      <Choice
        label={words.directions}
        value={directions}
        options={(['both', 'across', 'up'] as const).map((value) => ({
          value,
          label: words.direction[value],
        }))}
        onChange={(chosen) => onChange({ directions: chosen })}
      />
      <SettingField
        name={`kerf.${name}`}
        label={words.scoring}
        hint={words.scoringHint}
        setting={scoring}
        onChange={(said) =>
          onChange({
            scoring:
              said === undefined
                ? undefined
                : { powerPct: said.powerPct, speedMmPerS: said.speedMmPerS, passes: 1 },
          })
        }
      />
      {card.ok ? (
        <>
          <KerfCardPicture
            drawing={kerfCardDrawing(card.value)}
            label={words.picture(
              card.value.sheet.kind === 'comb' ? card.value.sheet.combs.length : 0,
            )}
          />
          <KerfCardFiles card={card.value} address={fileAddress} />
          <ol className="kerf-steps small">
            {kerfSheetText.steps(card.value).map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </>
      ) : (
        <ProblemNotice tone="stop" problem={card.problem} />
      )}
    </Section>
  );
};
