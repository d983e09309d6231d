import { pageApi } from '../../../wire/pageApi.ts';
import { IfMay } from '../../parts/action/IfMay.tsx';
import { unitChoiceNames } from '../../../core/units/unitPreference.ts';
import { cornersText, machineText as words, motionText } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Choice } from '../../parts/choice/Choice.tsx';
import { Beside } from '../../parts/page/Beside.tsx';
import { Page, Section } from '../../parts/page/Page.tsx';
import { chosenUnits, keepUnits } from '../../state/units.ts';
import { PhoneInvitation } from '../pair/PhoneInvitation.tsx';
import { NameHere } from '../people/NameHere.tsx';
import { MachineChanges } from './MachineChanges.tsx';
import { MachineForm } from './MachineForm.tsx';
import { MachineHere } from './MachineHere.tsx';
import { OwnMachines } from './OwnMachines.tsx';
import { pages } from '../../state/pages.ts';

/** What is known of the machine. It counts for the sheet on the bed at once, and for new sheets. */
export const MachineScreen = () => (
  <Page title={words.title} lead={words.lead} width="two">
    <Beside>
      <MachineHere>
        {(machine, change, here, study) => (
          <>
            <p className="soft">{study === undefined ? words.noStudy : words.forStudies}</p>
            <IfMay call={pageApi.describeMachine} isSaid>
              <MachineForm machineId={here.id} machine={machine} onChange={change} />
            </IfMay>
            <MachineChanges here={here} />
            <IfMay call={pageApi.describeMachine}>
              <OwnMachines here={here} />
            </IfMay>
          </>
        )}
      </MachineHere>
      <>
        <Section title={words.focus}>
          <p>{words.focusMore}</p>
          <div className="actions">
            <ActionLink href={pages.focus}>{words.findFocus}</ActionLink>
          </div>
        </Section>
        <Section title={motionText.title}>
          <p>{motionText.lead}</p>
          <div className="actions">
            <ActionLink href={pages.motion}>{motionText.link}</ActionLink>
          </div>
        </Section>
        <PhoneInvitation />
        <NameHere />
        <Section title={cornersText.door}>
          <p>{cornersText.doorMore}</p>
          <div className="actions">
            <ActionLink href={pages.corners}>{cornersText.open}</ActionLink>
          </div>
        </Section>
        <Section title={words.file}>
          <p>{words.fileMore}</p>
          <div className="actions">
            <ActionLink href={pages.checkFile}>{words.fileCheck}</ActionLink>
          </div>
        </Section>
        <Section title={words.units}>
          <Choice
            label={words.units}
            hideLabel
            value={chosenUnits()}
            options={unitChoiceNames.map((value) => ({
              value,
              label: words.unitChoices[value],
            }))}
            onChange={(value) => {
              keepUnits(value);
              location.reload();
            }}
          />
          <p className="small soft">{words.unitsMore}</p>
        </Section>
      </>
    </Beside>
  </Page>
);
