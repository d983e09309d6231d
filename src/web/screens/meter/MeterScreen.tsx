import type { Machine } from '../../../core/machine/machine.ts';
import { meterReport } from '../../../core/metering/meterReport.ts';
import type { UnkeptMetering } from '../../../core/metering/metering.ts';
import { currentWords, temperatureWords, meterText as words } from '../../../words/texts.ts';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readRated, readTemperature } from '../../parts/quantity/readers.ts';
import { useDraft } from '../../state/useDraft.ts';
import { withOptional } from '../../state/withOptional.ts';
import { MachineHere } from '../machine/MachineHere.tsx';
import { EarlierMeterings } from './EarlierMeterings.tsx';
import { KeepMetering } from './KeepMetering.tsx';
import { emptyDraft, readingsOf, readMeterDraft, type MeterDraft } from './meterDraft.ts';
import { MeterSays } from './MeterSays.tsx';
import { MeterTable } from './MeterTable.tsx';
import type { OfMachineProps } from './ofMachine.ts';
import './meter.css';

const acts = ['current', 'fire', 'unattended', 'always'] as const;

/** The guided sheet at the milliammeter, what it says, and how that stands to earlier ones. */
export const MeterScreen = () => (
  <Page title={words.title} lead={words.lead}>
    <MachineHere>
      {(machine, change, { id }) => <Meter machineId={id} machine={machine} onChange={change} />}
    </MachineHere>
  </Page>
);

const Meter = ({ machineId, machine, onChange }: OfMachineProps) => {
  const [draft, change] = useDraft<MeterDraft>({
    name: 'meter',
    initial: emptyDraft,
    lasting: readMeterDraft,
  });
  return (
    <>
      <Cautions acts={acts} />
      <Section title={words.before}>
        <div className="field-row">
          <QuantityField
            label={words.rated}
            hint={words.ratedHint}
            optional
            value={machine.ratedCurrentMa}
            show={currentWords}
            parse={readRated}
            onChange={(mA) => onChange(withOptional(machine, 'ratedCurrentMa', mA))}
          />
          <QuantityField
            label={words.water}
            hint={words.waterHint}
            optional
            value={draft.waterC}
            show={temperatureWords}
            parse={readTemperature}
            onChange={(waterC) => change({ ...draft, waterC })}
          />
        </div>
      </Section>
      <Section title={words.steps}>
        <ol className="meter-how">
          {words.how.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <p className="small soft">{words.stepsMore}</p>
        <MeterTable machine={machine} draft={draft} onChange={change} />
      </Section>
      <Said
        machineId={machineId}
        machine={machine}
        onChange={onChange}
        draft={draft}
        onKept={() => change({ ...emptyDraft })}
      />
      <EarlierMeterings machineId={machineId} machine={machine} onChange={onChange} />
    </>
  );
};

/** What was typed, with the machine it was read at. */
const meteringFrom = (
  machineId: string,
  machine: Machine,
  { waterC, ...draft }: MeterDraft,
): UnkeptMetering => ({
  machineId,
  ...(machine.ratedCurrentMa === undefined ? {} : { ratedCurrentMa: machine.ratedCurrentMa }),
  readings: readingsOf(draft),
  ...(waterC === undefined ? {} : { waterC }),
});

interface SaidProps extends OfMachineProps {
  readonly draft: MeterDraft;
  readonly onKept: () => void;
}

const Said = ({ machineId, machine, onChange, draft, onKept }: SaidProps) => {
  const metering = meteringFrom(machineId, machine, draft);
  const report = meterReport(metering);
  return (
    <Section title={words.says}>
      {report.ok ? (
        <MeterSays metering={metering} report={report.value} />
      ) : (
        <p className="soft">{words.tooFew}</p>
      )}
      <KeepMetering
        machineId={machineId}
        machine={machine}
        onChange={onChange}
        metering={metering}
        report={report.ok ? report.value : undefined}
        onKept={onKept}
      />
    </Section>
  );
};
