/**
 * Leads to the first field below that refuses what was typed into it, and says whether there is one. What is sent would else
 * be what stood there before, which nobody sees any more.
 */
export const goToRefusedField = (within: Element | null | undefined): boolean => {
  const field = within?.querySelector<HTMLElement>(
    // A file that was refused is not there: without it one may go on.
    '[aria-invalid="true"]:not([type="file"])',
  );
  if (field === null || field === undefined) return false;
  for (let fold = field.closest('details'); fold !== null;) {
    fold.open = true;
    fold = fold.parentElement?.closest('details') ?? null;
  }
  field.focus();
  return true;
};
