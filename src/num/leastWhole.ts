/**
 * The least whole number for which `enough` holds, by halving; `high`, where it holds, if it holds at no whole number
 * below. Once it holds it must hold for all that is greater, and it is never asked about 0 or below. O(log high).
 */
export const leastWhole = (high: number, enough: (value: number) => boolean): number => {
  let below = 0;
  let least = high;
  while (least - below > 1) {
    const middle = Math.ceil((below + least) / 2);
    if (enough(middle)) least = middle;
    else below = middle;
  }
  return least;
};
