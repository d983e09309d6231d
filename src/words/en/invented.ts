/** What stands on everything of the example workshop: screens, files, pages, labels, lines of a table. */
export const inventedText = {
  mark: 'Invented example',
  more: 'Nobody cut this: do not run it.',
  note: 'Invented example: nobody cut this. Do not run it.',
  stock: (stock: string, isExample: boolean) => (isExample ? `INVENTED EXAMPLE · ${stock}` : stock),
} as const;
