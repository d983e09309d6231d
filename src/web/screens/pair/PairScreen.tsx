import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { pageApi } from '../../../wire/pageApi.ts';
import { pairText as words } from '../../../words/en/screens/pair.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Page } from '../../parts/page/Page.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { callOrThrow } from '../../state/call.ts';
import { useWorkshop } from '../../state/workshop.tsx';

/** What a phone sees that is not let in yet. */
export const PairScreen = () => {
  const [code, setCode] = useState('');
  const [name, setName] = useState('');
  const { keeper } = useWorkshop();
  const pair = useMutation({
    mutationFn: () =>
      callOrThrow(pageApi.pair, {
        body: { code, ...(name.trim() === '' ? {} : { name: name.trim().slice(0, 40) }) },
      }),
    onSuccess: () => keeper.letIn(),
  });
  return (
    <Page title={words.title} lead={words.lead}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          pair.mutate();
        }}
      >
        <TextLine label={words.code} value={code} onChange={setCode} digits />
        <TextLine label={words.name} hint={words.nameHint} value={name} onChange={setName} />
        {pair.isError ? (
          <Notice tone="stop">
            <p>{pair.error.message}</p>
          </Notice>
        ) : null}
        <div className="actions">
          <Action
            kind="strong"
            isDisabled={code.trim() === '' || pair.isPending}
            onPress={() => pair.mutate()}
          >
            {words.letIn}
          </Action>
        </div>
      </form>
    </Page>
  );
};
