/** Where a part of the page is not there. */
export const fetchedText = {
  missing: 'This part of the page could not be fetched',
  away: 'The workshop computer does not answer. What you tapped and typed is kept; as soon as it answers, this page loads again by itself.',
  older:
    'The program on the workshop computer may be newer than this page. Loading it again helps; what you tapped and typed is kept.',
  broken: 'Something on this screen broke',
  brokenMore: 'What you tapped is kept. If it breaks again, go to another screen and come back.',
  tryAgain: 'Try again',
};
