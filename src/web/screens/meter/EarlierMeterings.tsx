import { useMutation, useQueryClient } from '@tanstack/react-query';
import { meterReport } from '../../../core/metering/meterReport.ts';
import type { Metering } from '../../../core/metering/metering.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { meterText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { SureAction } from '../../parts/action/SureAction.tsx';
import { EarlierList } from '../../parts/earlier/EarlierList.tsx';
import { callOrThrow } from '../../state/call.ts';
import { queryKeys, useMeterings } from '../../state/queries.ts';
import { CompareMeterings } from './CompareMeterings.tsx';
import type { OfMachineProps } from './ofMachine.ts';
import { tubePointsOf } from './tubePointsOf.ts';

/** The meterings of this machine, the latest first, and whether its curve has moved. */
export const EarlierMeterings = ({ machineId, machine, onChange }: OfMachineProps) => {
  const { data, isPending, refetch } = useMeterings();
  const cache = useQueryClient();
  const remove = useMutation({
    mutationFn: (id: string) => callOrThrow(pageApi.removeMetering, { params: { id } }),
    onSettled: () => cache.invalidateQueries({ queryKey: queryKeys.meterings }),
  });
  const own = data?.meterings.filter((metering) => metering.machineId === machineId);
  return (
    <>
      <EarlierList words={words} tests={own} isPending={isPending} onAgain={() => void refetch()}>
        {(metering) => (
          <Line
            metering={metering}
            onUse={(tubePoints) => onChange({ ...machine, tubePoints })}
            onRemove={() => remove.mutate(metering.id)}
          />
        )}
      </EarlierList>
      {own === undefined || own.length < 2 ? null : <CompareMeterings meterings={own} />}
    </>
  );
};

interface LineProps {
  readonly metering: Metering;
  readonly onUse: (points: ReturnType<typeof tubePointsOf>) => void;
  readonly onRemove: () => void;
}

const Line = ({ metering, onUse, onRemove }: LineProps) => {
  const report = meterReport(metering);
  const rated = report.ok ? report.value.rated : undefined;
  return (
    <>
      <p>
        <b>{new Date(metering.at).toLocaleDateString()}</b>{' '}
        {rated === undefined ? null : <span>{words.ratedShort(metering, rated)}</span>}
        <span className="meterings-more">{words.line(metering)}</span>
      </p>
      <div className="actions">
        {report.ok ? (
          <Action
            kind="quiet"
            calls={pageApi.describeMachine}
            onPress={() => onUse(tubePointsOf(report.value.curve))}
          >
            {words.use}
          </Action>
        ) : null}
        <SureAction calls={pageApi.removeMetering} ask={words.removeAsk} onPress={onRemove}>
          {words.remove}
        </SureAction>
      </div>
    </>
  );
};
