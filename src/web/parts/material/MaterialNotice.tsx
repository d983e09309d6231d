import type { MaterialJudgement } from '../../../core/stock/judgeMaterial.ts';
import { judgedMaterialWords, materialText as words } from '../../../words/texts.ts';
import { More } from '../more/More.tsx';
import { Notice, ProblemNotice } from '../notice/Notice.tsx';

/** What is to be said of a material: refused or cautioned with reason and source, or a question; nothing where it is plain. */
export const MaterialNotice = ({ judgement }: { readonly judgement: MaterialJudgement }) => {
  if (judgement.decision === 'allowed') return null;
  if (judgement.decision === 'unknown') {
    return <ProblemNotice problem={judgement.problem} tone="care" />;
  }
  const refused = judgement.decision === 'refuse';
  const { name, reason, hazards, sources } = judgedMaterialWords[judgement.judged];
  return (
    <Notice
      tone={refused ? 'stop' : 'care'}
      title={refused ? words.refused(name) : words.caution(name)}
    >
      <p>{reason}</p>
      <p>{words.hazards(hazards)}</p>
      {refused ? <p>{words.remedy}</p> : null}
      <More title={words.sources}>
        <ul className="notice-sources">
          {sources.map((source) => (
            <li key={source}>{source}</li>
          ))}
        </ul>
      </More>
    </Notice>
  );
};
