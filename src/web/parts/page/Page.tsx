import { useEffect, type ReactNode } from 'react';
import { anchor } from '../../state/anchor.ts';
import './page.css';

export interface PageProps {
  readonly title: string;
  /** A line under the title. */
  readonly lead?: ReactNode;
  readonly children: ReactNode;
  /** narrow: one column to read and fill in. two: two of them, where there is room. wide: as wide as the screen is useful. */
  readonly width?: 'narrow' | 'two' | 'wide';
}

/** A screen that is read from top to bottom: its title, and what belongs to it. */
export const Page = ({ title, lead, children, width = 'narrow' }: PageProps) => {
  useDocumentTitle(title);
  return (
    <div className={`page page-${width}`}>
      <div className="page-head">
        <h1>{title}</h1>
        {lead === undefined ? null : <p className="page-lead">{lead}</p>}
      </div>
      {children}
    </div>
  );
};

/** Names the screen for tabs, histories and screen readers, and after a move puts the focus on its heading. */
export const useDocumentTitle = (title: string): void => {
  useEffect(() => {
    document.title = `${title} · Throughcut`;
  }, [title]);
  useEffect(focusHeading, []);
};

/** The screen that the page opened on: nobody has moved yet. */
let isOpening = true;

/** Whoever moved by a link or a button that is gone would begin at the top of the page again. */
const focusHeading = (): void => {
  const wasOpening = isOpening;
  isOpening = false;
  const main = document.querySelector('main');
  const at = document.activeElement;
  if (wasOpening || anchor() !== '' || (at !== document.body && main?.contains(at) === true))
    return;
  const heading = main?.querySelector('h1');
  heading?.setAttribute('tabindex', '-1');
  heading?.focus({ preventScroll: true });
};

/** A part of a page under its own heading. */
export const Section = ({
  title,
  id,
  children,
}: {
  readonly title: string;
  /** Where a link may lead straight to. */
  readonly id?: string;
  readonly children: ReactNode;
}) => {
  useEffect(() => {
    // The section may have come after the page: a link to it still leads there.
    if (id !== undefined && anchor() === id) document.getElementById(id)?.scrollIntoView();
  }, [id]);
  return (
    <section className="section" id={id}>
      <h2>{title}</h2>
      {children}
    </section>
  );
};
