import { useState } from 'react';
import { compareMeterings } from '../../../core/metering/compareMeterings.ts';
import type { Metering } from '../../../core/metering/metering.ts';
import { whereToLook, type CutsNow } from '../../../core/metering/whereToLook.ts';
import { meterVerdictText as verdict, meterText as words } from '../../../words/texts.ts';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Looks } from '../../parts/looks/Looks.tsx';
import { More } from '../../parts/more/More.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { Field } from '../../parts/quantity/Field.tsx';
import { Said } from '../../parts/said/Said.tsx';

const answers = ['as-before', 'weaker', 'unsaid'] as const;

/** Two meterings held against each other; `meterings` of one machine, the latest first, two at least. */
export const CompareMeterings = ({ meterings }: { readonly meterings: readonly Metering[] }) => {
  const [nowId, setNowId] = useState<string>();
  const [beforeId, setBeforeId] = useState<string>();
  const [cuts, setCuts] = useState<CutsNow>('unsaid');
  const now = meterings.find(({ id }) => id === nowId) ?? meterings[0];
  const before = meterings.find(({ id }) => id === beforeId) ?? meterings[1];
  if (now === undefined || before === undefined) return null;
  return (
    <Section title={words.compare}>
      <div className="field-row">
        <Pick
          label={words.compareBefore}
          meterings={meterings}
          chosen={before}
          onChoose={setBeforeId}
        />
        <Pick label={words.compareNow} meterings={meterings} chosen={now} onChoose={setNowId} />
      </div>
      <Choice
        label={words.cuts}
        value={cuts}
        options={answers.map((value) => ({ value, label: words.cutsNow[value] }))}
        onChange={setCuts}
      />
      <Verdict before={before} now={now} cuts={cuts} />
    </Section>
  );
};

interface PickProps {
  readonly label: string;
  readonly meterings: readonly Metering[];
  readonly chosen: Metering;
  readonly onChoose: (id: string) => void;
}

const Pick = ({ label, meterings, chosen, onChoose }: PickProps) => (
  <Field label={label}>
    {(box) => (
      <select
        {...box}
        className="field-input"
        value={chosen.id}
        onChange={({ target }) => onChoose(target.value)}
      >
        {meterings.map((metering) => (
          <option key={metering.id} value={metering.id}>
            {new Date(metering.at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })}
          </option>
        ))}
      </select>
    )}
  </Field>
);

interface VerdictProps {
  readonly before: Metering;
  readonly now: Metering;
  readonly cuts: CutsNow;
}

const Verdict = ({ before, now, cuts }: VerdictProps) => {
  const compared = compareMeterings(before, now);
  if (!compared.ok) return <ProblemNotice tone="say" problem={compared.problem} />;
  const change = compared.value;
  const look = whereToLook(change, cuts);
  return (
    <div className="stack">
      <Said what="answer">
        <Notice tone={look.suspects.length > 0 ? 'care' : 'say'} title={verdict.change(change)}>
          <p>{verdict.verdict(look)}</p>
        </Notice>
      </Said>
      {change.remarks.map((remark) => (
        <ProblemNotice key={remark.code} tone="care" problem={remark} />
      ))}
      {look.suspects.length === 0 ? null : (
        <>
          <h3>{words.lookFirst}</h3>
          <Looks looks={look.suspects.map(verdict.suspect)} numbered />
        </>
      )}
      <More title={words.statistics}>
        <p>{words.statisticsMore(change.chanceOfLevel, change.chanceOfShape)}</p>
      </More>
    </div>
  );
};
