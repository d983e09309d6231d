import { useMutation } from '@tanstack/react-query';
import { pageApi } from '../../../wire/pageApi.ts';
import { pairText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Page } from '../../parts/page/Page.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { callOrThrow } from '../../state/call.ts';
import { keepRoleHere } from '../../state/role.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useWorkshop } from '../../state/workshop.tsx';

/** What a phone sees that is not let in yet. */
export const PairScreen = () => {
  const [{ code, name }, setDraft, sent] = useDraft({
    name: 'pair',
    initial: { code: '', name: '' },
  });
  const { store } = useWorkshop();
  const pair = useMutation({
    mutationFn: () =>
      callOrThrow(pageApi.pair, {
        body: { code, ...(name.trim() === '' ? {} : { name: name.trim().slice(0, 40) }) },
      }),
    onSuccess: ({ role }) => {
      keepRoleHere(role);
      sent();
      store.letIn();
    },
  });
  return (
    <Page title={words.title} lead={words.lead}>
      <Form onSend={() => pair.mutate()}>
        <TextLine
          label={words.code}
          value={code}
          onChange={(next) => setDraft({ code: next, name })}
          digits
        />
        <TextLine
          label={words.name}
          hint={words.nameHint}
          value={name}
          onChange={(next) => setDraft({ code, name: next })}
        />
        {pair.isError ? (
          <Notice tone="stop">
            <p>{pair.error.message}</p>
          </Notice>
        ) : null}
        <div className="actions">
          <Action kind="strong" isDisabled={code.trim() === '' || pair.isPending} submits>
            {words.letIn}
          </Action>
        </div>
      </Form>
    </Page>
  );
};
