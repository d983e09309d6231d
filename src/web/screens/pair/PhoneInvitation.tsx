import { encode } from 'uqr';
import { pairText as words } from '../../../words/texts.ts';
import { Section } from '../../parts/page/Page.tsx';
import { CodePicture } from '../../parts/code/CodePicture.tsx';
import { Action } from '../../parts/action/Action.tsx';
import { callOrThrow } from '../../state/call.ts';
import { usePairing } from '../../state/queries.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { PhonesLetIn } from './PhonesLetIn.tsx';
import { usePairingChange } from './usePairingChange.ts';

/** How a phone gets in; shown at the desk alone. */
export const PhoneInvitation = () => {
  const { data } = usePairing();
  const ask = usePairingChange(() => callOrThrow(pageApi.openPairing));
  if (data?.desk !== true) return null;
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
          {invitation.code === undefined ? (
            <>
              {invitation.pausedUntil === undefined ? null : <p>{words.paused}</p>}
              <div className="actions">
                <Action isDisabled={ask.isPending} onPress={() => ask.mutate()}>
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
