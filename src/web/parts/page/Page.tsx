import { useEffect, type ReactNode } from 'react';
import './page.css';

export interface PageProps {
  readonly title: string;
  /** A line under the title. */
  readonly lead?: ReactNode;
  readonly children: ReactNode;
  /** narrow: one column to read and fill in. wide: as wide as the screen is useful. */
  readonly width?: 'narrow' | 'wide';
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

/** Names the screen for tabs, histories and screen readers. */
export const useDocumentTitle = (title: string): void => {
  useEffect(() => {
    document.title = `${title} · Throughcut`;
  }, [title]);
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
    if (id !== undefined && location.hash === `#${id}`)
      document.getElementById(id)?.scrollIntoView();
  }, [id]);
  return (
    <section className="section" id={id}>
      <h2>{title}</h2>
      {children}
    </section>
  );
};
