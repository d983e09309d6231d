import type { QuantityKind, UnitCode } from '../../core/problems/units.ts';
import type { Sentences } from '../shape/sentence.ts';

const examples: Readonly<Record<QuantityKind, string>> = {
  length: 'a length, such as 3.2 mm or 1/8 in',
  speed: 'a speed, such as 15 mm/s, 1.2 m/min or 40 in/min',
  pressure: 'a pressure, such as 100 kPa, 1.4 bar or 20 psi',
  strength: 'the watts that the tube was sold as, such as 60 W',
  power: 'a power setting in per cent, such as 30 %',
  current: 'a current, such as 11 mA',
  temperature: 'a temperature, such as 19 °C or 66 °F',
  acceleration: 'an acceleration, such as 800 mm/s²',
  number: 'a figure, such as 300 or 3.2',
  duration: 'a time, such as 4:10, 4 min 10 s or 250 s',
};

const example = ({ kind }: { readonly kind: QuantityKind }): string => examples[kind];

export const unitWords = {
  'quantity-empty': {
    message: () => 'Nothing was typed here.',
    remedy: (p) => `Type ${example(p)}.`,
  },
  'quantity-not-a-number': {
    message: (p) => `“${p.text}” cannot be read as a figure.`,
    remedy: (p) => `Type ${example(p)}.`,
  },
  'quantity-negative': {
    message: (p) => `“${p.text}” is less than nothing.`,
    remedy: (p) => `Type ${example(p)}.`,
  },
  'quantity-figure-alone': {
    message: (p) => `“${p.text}” holds more than a figure.`,
    remedy: () => 'Type the figure alone, such as 300.',
  },
  'quantity-not-whole': {
    message: (p) => `“${p.text}” is not a whole number.`,
    remedy: () => 'Type a whole number, such as 12.',
  },
  'quantity-out-of-range': {
    message: (p) => `It must lie between ${p.least} and ${p.most}.`,
    remedy: (p) => `Type ${example(p)}.`,
  },
  'quantity-ambiguous': {
    message: (p) => `“${p.text}” can be read in two ways.`,
    remedy: (p) => `Type ${p.thousands} or ${p.decimal}, whichever you mean.`,
  },
  'quantity-unit-unknown': {
    message: (p) => `“${p.unit}” is not a unit that fits here.`,
    remedy: (p) => `Type ${example(p)}. Known units: ${p.known}.`,
  },
  'power-setting-above-100': {
    message: (p) => `A power setting ends at 100 %; “${p.text}” is more.`,
    remedy: () => 'Type the figure that is sent to the machine, 0 to 100 %.',
  },
} satisfies Sentences<UnitCode>;
