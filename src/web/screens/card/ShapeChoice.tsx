import { Label } from 'react-aria-components/Label';
import { RadioGroup } from 'react-aria-components/RadioGroup';
import { shapeOutline, testShapeNames, type TestShape } from '../../../core/card/testShapes.ts';
import { cardText as words } from '../../../words/texts.ts';
import { pathOf } from '../../parts/sheet/paths.ts';
import { Option } from '../../parts/choice/Option.tsx';
import '../../parts/choice/choice.css';

export interface ShapeChoiceProps {
  readonly shape: TestShape;
  readonly onChange: (shape: TestShape) => void;
}

/** The test shapes as they look. */
export const ShapeChoice = ({ shape, onChange }: ShapeChoiceProps) => (
  <RadioGroup
    className="choice shape-choice"
    value={shape}
    onChange={(value) => {
      const chosen = testShapeNames.find((each) => each === value);
      if (chosen !== undefined) onChange(chosen);
    }}
  >
    <Label className="field-label">{words.shape}</Label>
    <div className="choice-options">
      {testShapeNames.map((each) => (
        <Option key={each} value={each} className="choice-option">
          <svg className="shape-picture" viewBox="-1 -1 26 26" aria-hidden="true">
            <path d={pathOf([shapeOutline(each, 24, [12, 12])], 24)} />
          </svg>
          <span className="choice-name">{words.shapes[each]}</span>
        </Option>
      ))}
    </div>
  </RadioGroup>
);
