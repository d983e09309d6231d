import { Button } from 'react-aria-components/Button';
import { Group } from 'react-aria-components/Group';
import { Input } from 'react-aria-components/Input';
import { Label } from 'react-aria-components/Label';
import { NumberField } from 'react-aria-components/NumberField';
import './quantity.css';

export interface CountFieldProps {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly onChange: (value: number) => void;
}

/** A whole number, stepped by a thumb or typed. */
export const CountField = ({ label, value, least, most, onChange }: CountFieldProps) => (
  <NumberField
    className="quantity count"
    value={value}
    minValue={least}
    maxValue={most}
    step={1}
    onChange={(next) => {
      if (Number.isFinite(next)) onChange(next);
    }}
  >
    <Label className="field-label">{label}</Label>
    <Group className="count-group">
      <Button slot="decrement" className="count-step">
        −
      </Button>
      <Input className="field-input count-input figure-text" />
      <Button slot="increment" className="count-step">
        +
      </Button>
    </Group>
  </NumberField>
);
