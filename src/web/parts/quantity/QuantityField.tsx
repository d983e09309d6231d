import { done, type Outcome } from '../../../core/problem.ts';
import { TypedField, type TypedFieldProps } from './TypedField.tsx';

export interface QuantityFieldProps extends Pick<
  TypedFieldProps<number | undefined>,
  'label' | 'hint' | 'hideLabel' | 'problem' | 'onChange'
> {
  /** In the base unit; absent where nothing is known. */
  readonly value: number | undefined;
  readonly show: (value: number) => string;
  readonly parse: (text: string) => Outcome<number>;
  /** Whether the field may be left empty. */
  readonly optional?: boolean;
}

/** A number with its unit. An emptied field says that nothing is known where it may; else it is not taken, and left, what was known stands there again. */
export const QuantityField = ({ optional = false, ...props }: QuantityFieldProps) => {
  const { value, show, parse } = props;
  return (
    <TypedField<number | undefined>
      {...props}
      replaces
      show={(known) => (known === undefined ? '' : show(known))}
      parse={(text) =>
        text.trim() === '' && (optional || value === undefined) ? done(undefined) : parse(text)
      }
    />
  );
};
