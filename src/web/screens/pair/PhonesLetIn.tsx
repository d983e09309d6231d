import { pageApi } from '../../../wire/pageApi.ts';
import { pairText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { callOrThrow } from '../../state/call.ts';
import { usePairingChange } from './usePairingChange.ts';

interface PhoneSeen {
  readonly id: string;
  readonly name: string;
  readonly lastSeenAt: string;
}

/** The phones that are let in; each can be put out with a tap. */
export const PhonesLetIn = ({ phones }: { readonly phones: readonly PhoneSeen[] }) => {
  const remove = usePairingChange((id: string) =>
    callOrThrow(pageApi.removePhone, { params: { id } }),
  );
  if (phones.length === 0) return null;
  return (
    <div className="stack">
      <h3>{words.phones}</h3>
      <ul>
        {phones.map(({ id, name, lastSeenAt }) => (
          <li key={id}>
            {name} <span className="soft">{words.seen(lastSeenAt)}</span>{' '}
            <Action label={words.removeNamed(name)} onPress={() => remove.mutate(id)}>
              {words.remove}
            </Action>
          </li>
        ))}
      </ul>
    </div>
  );
};
