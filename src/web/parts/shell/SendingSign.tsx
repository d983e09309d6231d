import { shellText as words } from '../../../words/texts.ts';
import { usePageStoreState } from '../../state/workshop.tsx';

/** Says whether everything that was done here has reached the workshop's computer. */
export const SendingSign = () => {
  const { sending, waiting, unkept, aside } = usePageStoreState();
  const hasAside = sending === 'all-sent' && aside.length > 0;
  return (
    <p className={`shell-sending shell-sending-${sending}`}>
      <span className="shell-sending-dot" aria-hidden="true" />
      <span>
        {unkept > 0
          ? words.notKept
          : hasAside
            ? words.aside(aside.length)
            : words.sending[sending](waiting)}
      </span>
    </p>
  );
};
