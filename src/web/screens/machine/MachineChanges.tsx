import { pageApi } from '../../../wire/pageApi.ts';
import { IfMay } from '../../parts/action/IfMay.tsx';
import { machineChangeKinds, type MachineChangeKind } from '../../../core/machine/machineChange.ts';
import { problemOf } from '../../../core/problem.ts';
import type { WorkshopMachine } from '../../../core/machine/workshopMachine.ts';
import { machinesText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { More } from '../../parts/more/More.tsx';
import { Field } from '../../parts/quantity/Field.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { newId } from '../../state/newId.ts';
import { useDraft } from '../../state/useDraft.ts';
import { useWorkshop } from '../../state/workshop.tsx';

/** Something changed: what and on which day; cards from before teach less from there on. */
export const MachineChanges = ({ here }: { readonly here: WorkshopMachine }) => {
  const { store } = useWorkshop();
  const [{ what, day }, setDraft, sent] = useDraft<Draft>({
    name: `changed.${here.id}`,
    initial: () => ({ day: today() }),
  });
  const at = timeOf(day);
  const note = (): void => {
    if (what === undefined || at === undefined) return;
    const change = { id: newId(), at, what };
    store.make({ kind: 'note-machine-change', machineId: here.id, change });
    setDraft({ day });
    sent();
  };
  const latestFirst = [...here.changes].sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
  return (
    <Section title={words.changed}>
      <p>{words.changedMore}</p>
      {latestFirst.length === 0 ? null : (
        <ul className="machine-changes">
          {latestFirst.map((change) => (
            <li key={change.id} className="actions">
              <span>
                <b>{new Date(change.at).toLocaleDateString()}</b> {words.changes[change.what]}
              </span>
              <SureAction
                ask={words.takeBackAsk}
                calls={pageApi.removeMachineChange}
                onPress={() =>
                  store.make({
                    kind: 'remove-machine-change',
                    machineId: here.id,
                    changeId: change.id,
                  })
                }
              >
                {words.takeBack}
              </SureAction>
            </li>
          ))}
        </ul>
      )}
      <IfMay call={pageApi.noteMachineChange}>
        <More title={words.noteOne}>
          <Form onSend={note}>
            <Choice
              label={words.whatChanged}
              value={what}
              options={machineChangeKinds.map((value) => ({ value, label: words.changes[value] }))}
              onChange={(next) => setDraft({ what: next, day })}
            />
            <Field
              label={words.when}
              problem={day > today() ? problemOf('day-to-come', {}) : undefined}
            >
              {(box) => (
                <input
                  {...box}
                  type="date"
                  className="field-input"
                  value={day}
                  max={today()}
                  onChange={({ target }) =>
                    setDraft({ ...(what === undefined ? {} : { what }), day: target.value })
                  }
                />
              )}
            </Field>
            <div className="actions">
              <Action isDisabled={what === undefined || at === undefined} submits>
                {words.noteIt}
              </Action>
            </div>
          </Form>
        </More>
      </IfMay>
    </Section>
  );
};

interface Draft {
  readonly what?: MachineChangeKind;
  readonly day: string;
}

/** The day as it is here. */
const today = (): string => {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

/** Today: now, so that what was cut this morning came before. Another day: its beginning. Undefined: no day yet to come. */
const timeOf = (day: string): string | undefined => {
  if (!/^\d{4}-\d\d-\d\d$/.test(day) || day > today()) return undefined;
  return day === today() ? new Date().toISOString() : new Date(`${day}T00:00`).toISOString();
};
