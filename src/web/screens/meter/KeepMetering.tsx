import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { Machine } from '../../../core/machine/machine.ts';
import type { MeterReport } from '../../../core/metering/meterReport.ts';
import type { UnkeptMetering } from '../../../core/metering/metering.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { meterText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { callOrThrow } from '../../state/call.ts';
import { newId } from '../../state/newId.ts';
import { queryKeys } from '../../state/queries.ts';
import type { OfMachineProps } from './ofMachine.ts';
import { tubePointsOf } from './tubePointsOf.ts';
import { Said } from '../../parts/said/Said.tsx';

export interface KeepMeteringProps extends OfMachineProps {
  readonly metering: UnkeptMetering;
  /** Absent: the readings make no curve yet. */
  readonly report: MeterReport | undefined;
  readonly onKept: () => void;
}

/** Keeps the metering with its date; and, where it is wanted, tells the machine by it from now on. */
export const KeepMetering = (props: KeepMeteringProps) => {
  const { machine, onChange, metering, report, onKept } = props;
  const cache = useQueryClient();
  const keep = useMutation({
    mutationFn: (use: Machine | undefined) => {
      const body = { ...metering, id: newId(), at: new Date().toISOString() };
      return callOrThrow(pageApi.recordMetering, { body }).then(() => use);
    },
    onSuccess: (use) => {
      if (use !== undefined) onChange(use);
      onKept();
      void cache.invalidateQueries({ queryKey: queryKeys.meterings });
    },
  });
  const keepToPct = report?.rated?.keepToPct ?? 0;
  return (
    <div className="stack">
      <div className="actions">
        <Action
          kind="strong"
          calls={pageApi.describeMachine}
          keepsTyped
          isDisabled={report === undefined || keep.isPending}
          onPress={() => {
            if (report !== undefined)
              keep.mutate({ ...machine, tubePoints: tubePointsOf(report.curve) });
          }}
        >
          {words.keepAndUse}
        </Action>
        <Action
          calls={pageApi.recordMetering}
          keepsTyped
          isDisabled={report === undefined || keep.isPending}
          onPress={() => keep.mutate(undefined)}
        >
          {words.keep}
        </Action>
        {keepToPct > 0 && keepToPct < machine.maxPowerPct ? (
          <Action
            calls={pageApi.describeMachine}
            onPress={() => onChange({ ...machine, maxPowerPct: keepToPct })}
          >
            {words.allowMost(keepToPct)}
          </Action>
        ) : null}
      </div>
      {keep.isError ? (
        <Notice tone="stop">
          <p>{keep.error.message}</p>
        </Notice>
      ) : null}
      {keep.isSuccess && report === undefined ? (
        <Said what="done">{keep.data === undefined ? words.kept : words.keptAndUsed}</Said>
      ) : null}
    </div>
  );
};
