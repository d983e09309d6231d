/** A place in mm. Which corner is the origin is said by whoever hands it over; y points upwards unless said otherwise. */
export type Point = readonly [xMm: number, yMm: number];

export const distanceMm = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
