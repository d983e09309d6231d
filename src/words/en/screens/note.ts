/** What a person writes of a sheet, a card, a kept setting or a job in words of their own. */
export const noteText = {
  of: {
    sheet: 'Note on the sheet',
    card: (code: string) => `Note on card ${code}`,
    entry: 'Note',
    job: 'Name of the job',
  },
  hint: 'Kept with it, exported with it, and found by a search. Emptied, it is taken away.',
  jobHint: 'As you call it. The sheet is found by it. Emptied, it is taken away.',
  write: {
    sheet: 'Write a note on the sheet',
    card: 'Write a note on the card',
    entry: 'Write a note',
    job: 'Give the job a name',
  },
  change: {
    sheet: 'Change the note on the sheet',
    card: 'Change the note on the card',
    entry: 'Change the note',
    job: 'Change the name of the job',
  },
  keep: 'Keep it',
  kept: 'Kept.',
  gone: 'Taken away.',
  /** In one line of a list, cut short where it is long. */
  inList: (note: string) => {
    const line = note.trim().replace(/\s+/g, ' ');
    return line.length > 60 ? `${line.slice(0, 59)}…` : line;
  },
} as const;
