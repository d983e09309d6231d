/** What the sheet is called that a check strip is cut in. */
export const stripSheets = { reference: 'reference sheet', 'new-batch': 'first sheet' } as const;

/** Whether a card is cut in the reference sheet: whoever stands at the machine has another sheet at hand. */
export const isOfReferenceSheet = ({ sheet }: { readonly sheet?: string }): boolean =>
  sheet === stripSheets.reference;
