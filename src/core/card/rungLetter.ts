/** Without I and O, which look like figures. */
const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** The name of a rung by its place in the order of cutting, from 0: A … Z, then AA, AB …; 600 in all. */
export const rungLetter = (place: number): string => {
  const first = Math.floor(place / letters.length) - 1;
  return `${first < 0 ? '' : letters.charAt(first)}${letters.charAt(place % letters.length)}`;
};
