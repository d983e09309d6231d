/** The layer of what is to be read and never cut: frozen, so that programs leave it out, and called by what it is. */
export const notesLayer = 'cautions_not_cut';
