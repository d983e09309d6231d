import { shelfOfPage, type Shelf } from './shelf.ts';

/** The storage under that name, if this browser allows any: merely to look for it may be refused. */
const allowed = (find: () => Storage): Storage | undefined => {
  try {
    const storage = find();
    storage.getItem('throughcut');
    return storage;
  } catch {
    return undefined;
  }
};

const lasting = allowed(() => localStorage);

/** What this browser keeps for us; where it keeps nothing, what lives as long as the page. */
export const browserShelf: Shelf = lasting ?? shelfOfPage();

/** The same for this tab alone: it survives a reload, and ends with the tab. */
export const tabShelf: Shelf = allowed(() => sessionStorage) ?? shelfOfPage();

/** False where the browser keeps nothing at all for this address. */
export const keepsAnything = lasting !== undefined;
