/** How long a page of many kept settings may wait for how they stand; those not worked out by then say that they are not. */
export const pagePatienceMs = 3000;

/** The same for a whole table, which somebody downloads to keep. */
export const tablePatienceMs = 20_000;

/** Says when whoever asked has gone, or has waited for so long: each sum has a limit of its own, but a list has many sums. */
export const goneOrAfter = (gone: AbortSignal, ms: number): AbortSignal =>
  AbortSignal.any([gone, AbortSignal.timeout(ms)]);
