/** The way to an order that is cut sheet by sheet, from where a sheet stands. */
export const orderLinkText = {
  start: 'Start an order',
  goOn: 'Go on with the order',
  look: 'The last order',
};
