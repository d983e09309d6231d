import type { CardDrawing } from '../../../core/card/cardDrawing.ts';
import { plainDialect, type GcodeDialect } from '../../../core/machine/gcodeDialect.ts';
import { writeDxf } from '../../../formats/dxf/writeDxf.ts';
import { writeDrawingGcode } from '../../../formats/gcode/writeGcode.ts';
import { writeSvg } from '../../../formats/svg/writeSvg.ts';
import type { CautionAct } from '../../../words/caution.ts';
import { essentialCautions } from '../../../words/cautions.ts';
import { cornersText as words } from '../../../words/en/screens/corners.ts';
import { Action } from '../../parts/action/Action.tsx';
import { Cautions } from '../../parts/cautions/Cautions.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { saveText } from '../../state/saveText.ts';

const cutActs: readonly CautionAct[] = ['unattended', 'card', 'always'];

export interface CornersFilesProps {
  readonly drawing: CardDrawing;
  readonly gcode: GcodeDialect | undefined;
}

/** The drawing as files, with the cautions that go into them. */
export const CornersFiles = ({ drawing, gcode }: CornersFilesProps) => {
  const notes = essentialCautions(cutActs).map(({ sentence }) => sentence);
  const program = writeDrawingGcode(
    { title: 'four corners', drawing },
    gcode ?? plainDialect,
    notes,
  );
  return (
    <Section title={words.files}>
      <p>{words.howToLay}</p>
      <Cautions acts={cutActs} />
      <div className="actions">
        <Action
          onPress={() =>
            saveText('four-corners.svg', 'image/svg+xml', writeSvg(drawing, words.fileTitle, notes))
          }
        >
          {words.kinds.svg}
        </Action>
        <Action
          onPress={() => saveText('four-corners.dxf', 'image/vnd.dxf', writeDxf(drawing, notes))}
        >
          {words.kinds.dxf}
        </Action>
        {program.ok ? (
          <Action onPress={() => saveText('four-corners.gcode', 'text/plain', program.value)}>
            {words.kinds.gcode}
          </Action>
        ) : null}
      </div>
      {program.ok ? null : <ProblemNotice tone="care" problem={program.problem} />}
      <p className="small soft">{words.filesMore}</p>
    </Section>
  );
};
