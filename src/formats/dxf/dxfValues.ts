import type { Point } from '../../core/path/point.ts';
import type { DxfRecord } from './dxfGroups.ts';

/** A number as DXF writes it; NaN for anything else. */
const dxfNumber = (value: string): number =>
  value === '' || value.length > 60 ? Number.NaN : Number(value);

/** The values of one record, looked up by code. What is not said is what the reference gives; NaN where that is nothing. */
export class DxfValues {
  readonly #record: DxfRecord;
  #sound = true;

  constructor(record: DxfRecord) {
    this.#record = record;
  }

  get type(): string {
    return this.#record.type;
  }

  /** Whether everything that was asked for as a number was one. */
  get sound(): boolean {
    return this.#sound;
  }

  /** The first of its code. */
  text(code: number): string | undefined {
    return this.#record.groups.find((group) => group.code === code)?.value;
  }

  number(code: number, unsaid = Number.NaN): number {
    const said = this.text(code);
    return said === undefined ? this.#noted(unsaid) : this.figure(said);
  }

  point(code: number): Point {
    return [this.number(code), this.number(code + 10)];
  }

  numbers(code: number): readonly number[] {
    return this.#record.groups
      .filter((group) => group.code === code)
      .map(({ value }) => this.figure(value));
  }

  /** All points of a code, each begun by its x. */
  points(code: number): readonly Point[] {
    const found: [number, number][] = [];
    for (const group of this.#record.groups) {
      if (group.code === code) found.push([this.figure(group.value), Number.NaN]);
      const last = found.at(-1);
      if (group.code === code + 10 && last !== undefined) last[1] = this.figure(group.value);
    }
    for (const [, y] of found) this.#noted(y);
    return found;
  }

  figure(value: string): number {
    return this.#noted(dxfNumber(value));
  }

  #noted(value: number): number {
    if (Number.isNaN(value)) this.#sound = false;
    return value;
  }

  /** Groups in their order, for what is told by order. */
  get groups(): DxfRecord['groups'] {
    return this.#record.groups;
  }
}
