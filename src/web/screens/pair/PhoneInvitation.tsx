import { useState } from 'react';
import { encode } from 'uqr';
import { usualRole, type Role } from '../../../core/role.ts';
import { pairText as words } from '../../../words/texts.ts';
import { Section } from '../../parts/page/Page.tsx';
import { CodePicture } from '../../parts/code/CodePicture.tsx';
import { Action } from '../../parts/action/Action.tsx';
import { callOrThrow } from '../../state/call.ts';
import { usePairing } from '../../state/queries.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { RoleChoice } from './RoleChoice.tsx';
import { PhonesLetIn } from './PhonesLetIn.tsx';
import { usePairingChange } from './usePairingChange.ts';

/** How a phone gets in, and what it may do then; shown to who runs the place. */
export const PhoneInvitation = () => {
  const { data } = usePairing();
  const [role, setRole] = useState<Role>(usualRole);
  const ask = usePairingChange((as: Role) =>
    callOrThrow(pageApi.openPairing, { query: { role: as } }),
  );
  if (data === undefined || !(data.desk || data.invitation !== undefined)) return null;
  const { invitation } = data;
  return (
    <Section title={words.phone} id="phone">
      {invitation === undefined ? (
        <p>
          {words.notOpen} <code>{words.startsWith}</code>
        </p>
      ) : (
        <div className="stack">
          <p>{words.invite}</p>
          {invitation.addresses.map((address) => (
            <div key={address} className="stack">
              <p>
                <strong>{address}</strong>
              </p>
              <CodePicture matrix={encode(address).data} label={words.picture(address)} />
            </div>
          ))}
          <RoleChoice
            label={words.mayPhone}
            value={invitation.role ?? role}
            onChange={(wanted) => {
              setRole(wanted);
              // The code that stands there is for such a phone from now on.
              if (invitation.code !== undefined) ask.mutate(wanted);
            }}
          />
          {invitation.code === undefined ? (
            <>
              {invitation.pausedUntil === undefined ? null : <p>{words.paused}</p>}
              <div className="actions">
                <Action isDisabled={ask.isPending} onPress={() => ask.mutate(role)}>
                  {words.ask}
                </Action>
              </div>
            </>
          ) : (
            <p>
              {words.type} <strong className="pair-code figure-text">{invitation.code}</strong>
            </p>
          )}
          <PhonesLetIn phones={data.phones ?? []} />
        </div>
      )}
    </Section>
  );
};
