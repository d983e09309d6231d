/** Millimetres in each unit that SVG knows (CSS Values 3, 5.2: 96 px are an inch). */
const units: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
  '': 25.4 / 96,
};

/** A length such as `120mm` or `4in`, in mm; undefined for a share of something (`100%`) or what is no length. */
export const svgLengthMm = (text: string | undefined): number | undefined => {
  const [, number, unit = ''] =
    /^\s*\+?(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+)\s*([a-z]*)\s*$/i.exec(text ?? '') ?? [];
  const perUnit = units[unit.toLowerCase()];
  const value = Number(number);
  return number === undefined || perUnit === undefined || !Number.isFinite(value)
    ? undefined
    : value * perUnit;
};

export interface SvgFrame {
  readonly widthMm: number;
  readonly heightMm: number;
  /** From user units to mm, y turned upwards: the six figures of a matrix. */
  readonly matrix: readonly [number, number, number, number, number, number];
  /** The file does not say how long a unit is: 96 to the inch is taken. */
  readonly assumed: boolean;
}

/** The page of an SVG: its size, and what a user unit is in mm. */
export const svgFrame = (attributes: Readonly<Record<string, string>>): SvgFrame => {
  const box = (attributes['viewBox'] ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [left, top, boxWidth, boxHeight] = box;
  const hasBox =
    left !== undefined &&
    top !== undefined &&
    boxWidth !== undefined &&
    boxHeight !== undefined &&
    box.every(Number.isFinite) &&
    boxWidth > 0 &&
    boxHeight > 0;
  const px = 25.4 / 96;
  const widthMm = svgLengthMm(attributes['width']);
  const heightMm = svgLengthMm(attributes['height']);
  if (!hasBox) {
    const [width, height] = [widthMm ?? 0, heightMm ?? 0];
    return {
      widthMm: width,
      heightMm: height,
      matrix: [px, 0, 0, -px, 0, height],
      assumed: !absolute(attributes['width']),
    };
  }
  const byWidth = widthMm === undefined ? undefined : widthMm / boxWidth;
  const byHeight = heightMm === undefined ? undefined : heightMm / boxHeight;
  // One scale for both ways, the smaller, as a viewer that keeps proportions does.
  const scale = Math.min(byWidth ?? byHeight ?? px, byHeight ?? byWidth ?? px);
  const height = boxHeight * scale;
  return {
    widthMm: boxWidth * scale,
    heightMm: height,
    matrix: [scale, 0, 0, -scale, -left * scale, height + top * scale],
    assumed: byWidth === undefined && byHeight === undefined,
  };
};

const absolute = (text: string | undefined): boolean => /(mm|cm|in|pt|pc)\s*$/i.test(text ?? '');
