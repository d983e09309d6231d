import { useEffect, useState } from 'react';
import type { Refusal } from './call.ts';
import { refusalOf } from './call.ts';
import { workshopReach } from './reach.ts';

/** The name that an answer is to be kept under (RFC 6266). */
const nameIn = (disposition: string | null): string | undefined =>
  /filename="([^"]*)"/.exec(disposition ?? '')?.[1];

/** Fetches a file of the workshop's within this page, and hands it to the browser to be saved or shown. */
export const handOver = async (
  address: string,
  { fileName }: { readonly fileName?: string } = {},
): Promise<Refusal | undefined> => {
  const response = await workshopReach().ask(address, { method: 'GET' });
  if (!response.ok) return refusalOf(response.status, await response.text());
  const link = document.createElement('a');
  link.href = URL.createObjectURL(await response.blob());
  link.download = fileName ?? nameIn(response.headers.get('content-disposition')) ?? '';
  link.click();
  // A browser may begin to read it only after the click.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return undefined;
};

/** Where a picture of the workshop's can be shown from; undefined while it is fetched within this page. */
export const usePictureAt = (address: string): string | undefined => {
  const [shown, setShown] = useState<string>();
  const { ask, isServed } = workshopReach();
  useEffect(() => {
    if (isServed) return;
    let made: string | undefined;
    let wanted = true;
    const show = async (): Promise<void> => {
      const response = await ask(address, { method: 'GET' });
      const picture = response.ok ? await response.blob() : undefined;
      if (!wanted || picture === undefined) return;
      made = URL.createObjectURL(picture);
      setShown(made);
    };
    void show();
    return () => {
      wanted = false;
      if (made !== undefined) URL.revokeObjectURL(made);
    };
  }, [address, ask, isServed]);
  return isServed ? address : shown;
};
