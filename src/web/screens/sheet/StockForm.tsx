import type { Stock } from '../../../core/stock/stock.ts';
import { lengthWords, sheetText as words } from '../../../words/texts.ts';
import { MaterialField } from '../../parts/material/MaterialField.tsx';
import { readList } from '../../parts/quantity/listReader.ts';
import { QuantityField } from '../../parts/quantity/QuantityField.tsx';
import { readThickness } from '../../parts/quantity/readers.ts';
import { TypedField } from '../../parts/quantity/TypedField.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { withOptional } from '../../state/withOptional.ts';
import { ThicknessSaid } from './ThicknessSaid.tsx';

export interface StockFormProps {
  readonly stock: Stock;
  readonly onChange: (stock: Stock) => void;
}

/** What the sheet is: material, thickness by its label and by the caliper, delivery. */
export const StockForm = ({ stock, onChange }: StockFormProps) => (
  <div className="stack">
    <MaterialField
      label={words.material}
      hint={words.materialHint}
      value={stock}
      onChange={({ material, materialKnown }) =>
        onChange(withOptional({ ...stock, material }, 'materialKnown', materialKnown))
      }
    />
    <QuantityField
      label={words.thickness}
      value={stock.nominalThicknessMm}
      show={lengthWords}
      parse={readThickness}
      onChange={(value) => {
        if (value !== undefined && value > 0) onChange({ ...stock, nominalThicknessMm: value });
      }}
    />
    <TypedField
      label={words.measured}
      hint={words.measuredHint}
      value={stock.thicknessReadingsMm}
      show={(values) => values.map(lengthWords).join(', ')}
      parse={readLengths}
      onChange={(thicknessReadingsMm) => onChange({ ...stock, thicknessReadingsMm })}
    />
    <ThicknessSaid stock={stock} />
    <TextLine
      label={words.batch}
      hint={words.batchHint}
      value={stock.batch ?? ''}
      onChange={(text) =>
        onChange(withOptional(stock, 'batch', text.trim() === '' ? undefined : text))
      }
    />
  </div>
);

const readLengths = readList(readThickness);
