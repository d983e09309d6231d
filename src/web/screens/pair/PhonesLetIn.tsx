import { useState } from 'react';
import type { Role } from '../../../core/role.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { pairText as words, roleText } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Form } from '../../parts/form/Form.tsx';
import { More } from '../../parts/more/More.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { callOrThrow } from '../../state/call.ts';
import { RoleChoice } from './RoleChoice.tsx';
import { usePairingChange } from './usePairingChange.ts';

interface PhoneSeen {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly lastSeenAt: string;
}

/** The phones that are let in: what each may do and is called, and a tap that puts it out. */
export const PhonesLetIn = ({ phones }: { readonly phones: readonly PhoneSeen[] }) => {
  if (phones.length === 0) return null;
  return (
    <div className="stack">
      <h3>{words.phones}</h3>
      {phones.map((phone) => (
        <PhoneLine key={phone.id} phone={phone} />
      ))}
    </div>
  );
};

const PhoneLine = ({ phone: { id, name, role, lastSeenAt } }: { readonly phone: PhoneSeen }) => {
  const [typed, setTyped] = useState(name);
  const remove = usePairingChange(() => callOrThrow(pageApi.removePhone, { params: { id } }));
  const change = usePairingChange((body: { readonly name?: string; readonly role?: Role }) =>
    callOrThrow(pageApi.changePhone, { params: { id }, body }),
  );
  const refused = remove.error ?? change.error;
  return (
    <div className="stack">
      <p>
        <b>{name}</b> {roleText.is[role]} <span className="soft">{words.seen(lastSeenAt)}</span>{' '}
        <Action label={words.removeNamed(name)} onPress={() => remove.mutate()}>
          {words.remove}
        </Action>
      </p>
      <More title={words.changeNamed(name)}>
        <RoleChoice
          label={words.mayNamed(name)}
          value={role}
          onChange={(wanted) => change.mutate({ role: wanted })}
        />
        <Form onSend={() => change.mutate({ name: typed.trim().slice(0, 40) })}>
          <div className="field-row">
            <TextLine label={words.newName} value={typed} onChange={setTyped} />
          </div>
          <div className="actions">
            <Action submits isDisabled={typed.trim() === '' || typed.trim() === name}>
              {words.rename}
            </Action>
          </div>
        </Form>
      </More>
      {refused === null ? null : (
        <Notice tone="stop">
          <p>{refused.message}</p>
        </Notice>
      )}
    </div>
  );
};
