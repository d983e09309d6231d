import { shellText as words } from '../../../words/texts.ts';
import { keepsAnything } from '../../state/browserShelf.ts';
import { whyInWords } from '../../state/call.ts';
import { usePageStoreState } from '../../state/workshop.tsx';
import { ActionLink } from '../action/Action.tsx';
import { Notice } from '../notice/Notice.tsx';
import { pages } from '../../state/pages.ts';

/** What stands between what was done here and the workshop's computer, where something does. */
export const Troubles = () => {
  const { aside, sending, why, waiting, unkept } = usePageStoreState();
  const [last] = aside.slice(-1);
  return (
    <>
      {keepsAnything ? null : (
        <Trouble title={words.keepsNothing} tone="care">
          <p>{words.keepsNothingMore}</p>
        </Trouble>
      )}
      {keepsAnything && unkept > 0 ? (
        <Trouble title={words.noRoom(unkept)} tone="care">
          <p>{words.noRoomMore}</p>
        </Trouble>
      ) : null}
      {sending === 'held' && why !== undefined ? (
        <Trouble title={words.sending.held(waiting)} tone="care">
          <p>
            {whyInWords(why).message} {whyInWords(why).remedy}
          </p>
        </Trouble>
      ) : null}
      {last === undefined ? null : (
        <Trouble title={words.aside(aside.length)} tone="stop">
          <p>
            {last.why.message} {last.why.remedy}
          </p>
          <ActionLink kind="quiet" href={pages.notTaken}>
            {words.asideLook}
          </ActionLink>
        </Trouble>
      )}
    </>
  );
};

const Trouble = (notice: Parameters<typeof Notice>[0]) => (
  <div className="shell-trouble">
    <Notice {...notice} />
  </div>
);
