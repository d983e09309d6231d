/**
 * How fast a controller takes a corner. Which rule a machine follows, and with what figure, is seen from a few timed jobs.
 * `junction-deviation`: as fast as round an arc that leaves the corner by no more than `deviationMm`.
 * `speed-jump`: so fast that the speed of no axis jumps by more than its figure.
 */
export type CornerRule =
  | { readonly rule: 'junction-deviation'; readonly deviationMm: number }
  | { readonly rule: 'speed-jump'; readonly xMmPerS: number; readonly yMmPerS: number };

/** How a machine moves: what the time of a job depends on beside its drawing and its settings. */
export interface MotionValues {
  /** Along the path, with the beam on. */
  readonly accelerationMmPerS2: number;
  readonly corner: CornerRule;
  readonly travelSpeedMmPerS: number;
  /** Between lines, beam off. Absent: as with the beam on. */
  readonly travelAccelerationMmPerS2?: number;
  /** Lost at each line: beam on, beam off, the controller's pause. */
  readonly lineDelayS?: number;
  /** Lost once a job: homing, air, fans. */
  readonly jobDelayS?: number;
  /** How far a time from these figures may be off, as a standard deviation, in per cent of it. */
  readonly timeErrorPct?: number;
}
