import { useLayoutEffect, useRef, type RefObject } from 'react';

/**
 * The box of a figure that typing replaces: it is selected when it is entered, and again whenever the figure in it is
 * reckoned anew under the caret; else what is typed next would be added to it.
 *
 * @param shown What stands in the box by itself; undefined while a person types.
 */
export const useReplaceable = (shown: string | undefined): RefObject<HTMLInputElement | null> => {
  const box = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => {
    if (shown !== undefined && box.current === document.activeElement) box.current?.select();
  }, [shown]);
  return box;
};
