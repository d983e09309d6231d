import { useMutation, useQueryClient } from '@tanstack/react-query';
import { undescribedMachine } from '../../../core/machine/machine.ts';
import type { WorkshopMachine } from '../../../core/machine/workshopMachine.ts';
import { machinesText as words } from '../../../words/texts.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { Action } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { callOrThrow } from '../../state/call.ts';
import { pickMachine } from '../../state/machineHere.ts';
import { useMachines } from '../../state/machines.ts';
import { newId } from '../../state/newId.ts';
import { queryKeys } from '../../state/queries.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useWorkshop } from '../../state/workshop.tsx';

/** One more machine; and, of several, on which sheets are begun, and away with one that nothing is of. */
export const OwnMachines = ({ here }: { readonly here: WorkshopMachine }) => {
  const { store } = useWorkshop();
  const { own } = useMachines();
  const cache = useQueryClient();
  const [name, setName, sent] = useDraft({ name: 'machine.new', initial: '' });
  const remove = useMutation({
    mutationFn: (id: string) => callOrThrow(pageApi.removeMachine, { params: { id } }),
    onSuccess: () => cache.invalidateQueries({ queryKey: queryKeys.machines }),
  });
  const addedAt = (): string => new Date().toISOString();
  const add = (): void => {
    const id = newId();
    // The one and only is there from now on, though nobody has said anything of it.
    if (own.length === 0)
      store.make({ kind: 'describe-machine', machineId: here.id, addedAt: addedAt() });
    const machine = { ...undescribedMachine, name: name.trim() };
    store.make({ kind: 'describe-machine', machineId: id, addedAt: addedAt(), machine });
    pickMachine(id);
    setName('');
    sent();
  };
  return (
    <Section title={words.own}>
      <p>{words.ownMore}</p>
      {own.length < 2 || here.isExample ? null : (
        <div className="actions">
          {here.isDefault ? (
            <span>{words.isUsual}</span>
          ) : (
            <Action
              onPress={() =>
                store.make({
                  kind: 'describe-machine',
                  machineId: here.id,
                  addedAt: addedAt(),
                  isDefault: true,
                })
              }
            >
              {words.makeUsual}
            </Action>
          )}
          <SureAction ask={words.removeAsk} onPress={() => remove.mutate(here.id)}>
            {words.remove}
          </SureAction>
        </div>
      )}
      {remove.isError ? (
        <Notice tone="stop">
          <p>{remove.error.message}</p>
        </Notice>
      ) : null}
      <Form onSend={add}>
        <div className="field-row">
          <TextLine label={words.newName} value={name} onChange={setName} />
        </div>
        <div className="actions">
          <Action isDisabled={name.trim() === ''} submits>
            {words.add}
          </Action>
        </div>
      </Form>
    </Section>
  );
};
