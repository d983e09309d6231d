import { slotFits, type Joint } from '../../../core/kerf/joints.ts';
import { kerfCardDrawing, type KerfCard } from '../../../core/kerf/kerfCard.ts';
import type { Outcome, Problem } from '../../../core/problem.ts';
import { kerfText as words, lengthWords } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readThickness } from '../../parts/quantity/readers.ts';
import { Said } from '../../parts/said/Said.tsx';
import { KerfCardFiles } from './KerfCardFiles.tsx';
import { KerfCardPicture } from './KerfCardPicture.tsx';
import { fitKey, type KerfDraft } from './kerfDraft.ts';

export interface SlotPartProps {
  readonly draft: KerfDraft;
  readonly onChange: (part: Partial<KerfDraft>) => void;
  readonly tongueMm: number;
  readonly card: Outcome<KerfCard>;
  readonly fileAddress: (kind: string) => string;
  readonly joints: readonly Joint[];
  /** What is said of the joints, or why there are none. */
  readonly remarks: readonly Problem[];
}

/** The slot card, how a tongue goes into its slots, and what to draw. */
export const SlotPart = (props: SlotPartProps) => {
  const { draft, onChange, tongueMm, card, fileAddress, joints, remarks } = props;
  const slots = card.ok && card.value.sheet.kind === 'slots' ? card.value.sheet.slots : [];
  return (
    <Section title={words.slots}>
      <p className="soft">{words.slotsMore}</p>
      <QuantityField
        label={words.thickness}
        hint={words.thicknessHint}
        value={tongueMm}
        show={lengthWords}
        parse={readThickness}
        onChange={(mm) => {
          if (mm !== undefined && mm > 0) onChange({ tongueMm: mm });
        }}
      />
      {card.ok ? (
        <>
          <KerfCardPicture
            drawing={kerfCardDrawing(card.value)}
            label={words.slotsPicture(slots.length)}
          />
          <KerfCardFiles card={card.value} address={fileAddress} />
        </>
      ) : (
        <ProblemNotice tone="stop" problem={card.problem} />
      )}
      <p className="small soft">{words.fitsMore}</p>
      <div className="kerf-fits">
        {slots.map(({ drawnMm }) => (
          <Choice
            key={drawnMm}
            label={words.slot(drawnMm)}
            value={draft.fits[fitKey(drawnMm)]}
            options={slotFits.map((value) => ({ value, label: words.fits[value] }))}
            onChange={(fit) => onChange({ fits: { ...draft.fits, [fitKey(drawnMm)]: fit } })}
          />
        ))}
      </div>
      <h3>{words.joints}</h3>
      {joints.length === 0 ? (
        <p className="soft">{words.jointsNothing}</p>
      ) : (
        <Said what="answer" className="kerf-says">
          {joints.map((joint) => (
            <p key={joint.kind}>{words.joint(joint)}</p>
          ))}
        </Said>
      )}
      {remarks.map((remark, i) => (
        <ProblemNotice key={`${remark.code}${String(i)}`} tone="say" problem={remark} />
      ))}
    </Section>
  );
};
