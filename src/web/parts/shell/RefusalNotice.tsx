import { shellText as words } from '../../../words/en/screens/shell.ts';
import { useKeeperState, useWorkshop } from '../../state/workshop.tsx';
import { Action } from '../action/Action.tsx';
import { Notice } from '../notice/Notice.tsx';

/** The last change that the server would not take, in its own words. */
export const RefusalNotice = () => {
  const { refusal } = useKeeperState();
  const { keeper } = useWorkshop();
  if (refusal === undefined) return null;
  return (
    <div className="shell-refusal">
      <Notice tone="stop" title={`${words.refused}: ${refusal.message}`}>
        <p>{refusal.remedy}</p>
        <Action kind="quiet" onPress={keeper.forgetRefusal}>
          {words.understood}
        </Action>
      </Notice>
    </div>
  );
};
