import { pageApi } from '../../../wire/pageApi.ts';
import { useMay } from '../../state/role.ts';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { firstText as words } from '../../../words/texts.ts';
import { pages } from '../../state/pages.ts';
import './doors.css';

/** The four ways in. */
export const Doors = () => {
  const may = useMay();
  return (
    <nav className="doors" aria-labelledby="doors-title">
      <h2 id="doors-title" className="unseen">
        {words.doors}
      </h2>
      {may(pageApi.startStudy) ? (
        <>
          <Door href={pages.describeCard} title={words.described} more={words.describedMore}>
            <path d="M5 11h30v22H5zM9 15h4v4H9zM18 15h4v4h-4zM27 15h4v4h-4zM9 25h4v4H9z" />
            <path className="door-solid" d="M18 25h4v4h-4zM27 25h4v4h-4z" />
          </Door>
          <Door href={pages.newSheet} title={words.newSheet} more={words.newSheetMore}>
            <path d="M4 26l14-16h18L22 26zM4 26v4h18v-4M36 10v4L22 30" />
          </Door>
          <Door href={pages.sayRun} title={words.run} more={words.runMore}>
            <path d="M6 29a15 15 0 1 1 28 0M20 26l7-11M9 29h3M28 29h3M20 12v3" />
          </Door>
        </>
      ) : null}
      <Door href={pages.trouble} title={words.trouble} more={words.troubleMore}>
        <path d="M5 9h30v15H5zM14 13h12v7H14zM12 33h16M20 20v6" />
      </Door>
    </nav>
  );
};

interface DoorProps {
  readonly href: string;
  readonly title: string;
  readonly more: string;
  readonly children: ReactNode;
}

const Door = ({ href, title, more, children }: DoorProps) => (
  <Link href={href} className="door">
    <svg className="door-picture" viewBox="0 0 40 40" aria-hidden="true">
      {children}
    </svg>
    <span>
      <span className="door-title">{title}</span>
      <span className="door-more">{more}</span>
    </span>
  </Link>
);
