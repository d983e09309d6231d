import { shellText as words } from '../../../words/en/screens/shell.ts';
import { useKeeperState } from '../../state/workshop.tsx';

/** Says whether everything that was done here has reached the workshop's computer. */
export const SendingSign = () => {
  const { sending, waiting, isKept } = useKeeperState();
  const text = sending === 'away' ? words.sending.away(waiting) : words.sending[sending];
  return (
    <p className={`shell-sending shell-sending-${sending}`} role="status">
      <span className="shell-sending-dot" aria-hidden="true" />
      <span>{isKept || waiting === 0 ? text : words.notKept}</span>
    </p>
  );
};
