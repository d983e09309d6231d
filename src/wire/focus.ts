import { rampFileKinds } from '../formats/machineFiles.ts';
import { z } from 'zod';
import { id, label, pct, speedMmPerS, thicknessMm } from '../formats/saved/bounds.ts';
import { focusTestShape } from '../formats/saved/focusTest.ts';
import { unitsWanted } from './unitsWanted.ts';

/** A problem with its remedy. */
const asked = z.strictObject({ code: z.string(), message: z.string(), remedy: z.string() });
const interval = z.strictObject({ value: z.number(), low: z.number(), high: z.number() });

/** One focus test and what it found; intervals of 95 %. */
export const focusTestReply = z.strictObject({
  test: focusTestShape,
  /** Absent: no focus was found, for this reason. */
  found: z
    .strictObject({
      alongMm: interval,
      /** The gap between nozzle and sheet at which the sheet lies in the focus. */
      gapMm: interval,
      /** Over what length the beam's area is no more than doubled. Absent: the readings do not tell. */
      depthMm: interval.exactOptional(),
      /** The thickest sheet that one height surely serves. */
      servedThicknessMm: z.number().exactOptional(),
      /** Absent: no gauge was named. */
      gauge: z
        .strictObject({ verdict: z.enum(['fits', 'near', 'off']), byMm: z.number() })
        .exactOptional(),
      remarks: z.array(asked),
    })
    .exactOptional(),
  reason: asked.exactOptional(),
});

const mm = z.coerce.number().min(0).max(2000);

/** A focus ramp asked for as a file. */
export const rampFileQuery = z.strictObject({
  material: label,
  /** A person has looked at what it is, where its name leaves that open. */
  materialKnown: z.enum(['true', 'false']).exactOptional(),
  /** Absent: as the study's sheet where it is of the same material, else 3 mm. */
  thicknessMm: z.coerce.number().pipe(thicknessMm).exactOptional(),
  lengthMm: mm,
  blockMm: mm,
  nozzleGapMm: mm,
  powerPct: z.coerce.number().pipe(pct),
  speedMmPerS: z.coerce.number().pipe(speedMmPerS),
  /** Whose machine's limits and G-code count. */
  studyId: id.exactOptional(),
  units: unitsWanted,
});
export const byRampKind = z.strictObject({ kind: z.enum(rampFileKinds) });
