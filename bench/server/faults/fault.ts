import { problemInWords } from '../../../src/words/words.ts';
import { runCommand, type Ended, type Served } from '../program.ts';

/** One thing that goes wrong around the program. Gives what was not as it should be, in words; none: all was. */
export interface Fault {
  readonly what: string;
  readonly wrongIn: (folder: string) => Promise<readonly string[] | 'not here'>;
}

/** A refusal as commands and the server give it. */
export interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

/** What a refusal lacks: its code, a sentence, a remedy. */
export const judged = (code: string, said: Partial<Refusal> | undefined): readonly string[] => [
  ...(said?.code === code ? [] : [`${code} is meant, ${said?.code ?? 'nothing'} is said`]),
  ...((said?.message?.length ?? 0) > 10 ? [] : ['it has no sentence']),
  ...((said?.remedy?.length ?? 0) > 10 ? [] : ['it has no remedy']),
];

/** A refusal in what was printed or answered. */
export const parsed = (text: string): { readonly error?: Refusal } => {
  try {
    return JSON.parse(text) as { readonly error?: Refusal };
  } catch {
    return {};
  }
};

/** A command that ends with 2 and says why; where it serves, it says so to whoever started it. */
export const refusedWith = (code: string, { code: ended, out, err }: Ended): readonly string[] => {
  const { message, remedy } = problemInWords({ code, params: {} });
  const toAPerson = err.includes(remedy) ? { code, message, remedy } : undefined;
  return [
    ...(ended === 2 ? [] : [`it ended with ${String(ended)}: ${err.slice(0, 200)}`]),
    ...judged(code, parsed(out).error ?? toAPerson),
  ];
};

/** A request, and what came of it. */
export const asked = async (
  { base }: Served,
  method: string,
  path: string,
  body?: unknown,
): Promise<{ readonly status: number; readonly said: unknown }> => {
  const reply = await fetch(`${base}${path}`, {
    method,
    ...(body === undefined
      ? {}
      : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
  });
  return { status: reply.status, said: await reply.json() };
};

/** A sheet as it is begun. */
export const sheet = (id: string, material = 'birch plywood'): object => ({
  id,
  stock: { material, nominalThicknessMm: 3, thicknessReadingsMm: [] },
});

/** Ids of all that is stored. */
export const sheetsOf = async (data: string): Promise<readonly string[]> => {
  const { studies } = JSON.parse((await runCommand(['export'], data)).out) as {
    readonly studies: readonly { readonly id: string }[];
  };
  return studies.map(({ id }) => id);
};
