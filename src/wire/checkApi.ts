import { toolpathKinds } from '../core/filecheck/toolpath.ts';
import { z } from 'zod';
import { readingLimits } from '../formats/readingLimits.ts';
import { route } from './route.ts';

/** The check of a file: apart from the others, since the page checks files itself. */
export const checkApi = {
  checkFile: route({
    method: 'POST',
    path: '/api/calc/check',
    least: 'reads-and-counts',
    summary:
      'What would go wrong with a drawing or program, by itself, against its card, against the machine; nothing is stored, and nothing is called safe',
    body: z.strictObject({
      /** What stands in the file: SVG, DXF or G-code. */
      text: z.string().max(readingLimits.bytes),
      /** The card's own file (`card.json`). */
      card: z.looseObject({}).exactOptional(),
      /** As in a machine file. */
      machine: z.looseObject({}).exactOptional(),
    }),
    reply: z.strictObject({
      version: z.literal(1),
      kind: z.enum(toolpathKinds),
      ok: z.boolean(),
      faults: z.number().int(),
      findings: z.array(
        z.looseObject({
          severity: z.string(),
          code: z.string(),
          message: z.string(),
          remedy: z.string(),
        }),
      ),
      lines: z.number().int(),
      lengthMm: z.number(),
      sizeMm: z.array(z.number()).exactOptional(),
    }),
  }),
} as const;
