/** What stands where an answer will: it comes with the first view, the answer's own words with the first tap. */
export const answerHeadText = {
  title: 'The answer',
  nothingYet: 'Tap each shape that you have looked at. The answer stands here as you go.',
  calculating: 'Calculating…',
  broke: (what: string) =>
    `The calculation broke off (${what}). Your readings are safe; please report this.`,
};
