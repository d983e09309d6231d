import type { Study } from '../../../core/study/study.ts';
import { studyText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { useHome } from '../../state/queries.ts';
import { useWorkshop } from '../../state/workshop.tsx';

/** Where another sheet lies on the bed: says so, and puts this one there. A strip is cut in passing and stays off it. */
export const OnTheBed = ({ study }: { readonly study: Study }) => {
  const { data } = useHome();
  const { store } = useWorkshop();
  const onBed = data?.latest?.study;
  if (onBed === undefined || onBed.id === study.id) return null;
  if (study.stripOf !== undefined || (study.isExample && !onBed.isExample)) return null;
  return (
    <div className="actions">
      <p className="soft">{words.notOnBed}</p>
      <Action onPress={() => store.make({ kind: 'put-on-bed', studyId: study.id })}>
        {words.putOnBed}
      </Action>
    </div>
  );
};
