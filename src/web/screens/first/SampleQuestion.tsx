import { pageApi } from '../../../wire/pageApi.ts';
import { firstText as words } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import type { SampleCard } from '../../state/sampleCard.ts';
import { pages } from '../../state/pages.ts';

/** Whose card it is that was tapped; before that is said, nothing is stored. */
export const SampleQuestion = ({ sample }: { readonly sample: SampleCard }) =>
  sample.isOpen ? (
    <Notice tone="say" title={words.yours}>
      <p>{words.yoursMore}</p>
      <div className="actions">
        <Action kind="strong" calls={pageApi.startStudy} onPress={sample.own}>
          {words.own}
        </Action>
        <ActionLink calls={pageApi.startStudy} href={pages.describeCard}>
          {words.other}
        </ActionLink>
        <Action kind="quiet" onPress={sample.clear}>
          {words.tried}
        </Action>
      </div>
    </Notice>
  ) : null;
