import type { ReactNode } from 'react';
import { Link, useRoute } from 'wouter';
import { shellText as words } from '../../../words/texts.ts';
import { SendingSign } from './SendingSign.tsx';
import { Troubles } from './Troubles.tsx';
import { pages } from '../../state/pages.ts';
import './shell.css';

/** What stands around every screen: the name, three places, and whether all is saved. */
export const Shell = ({ children }: { readonly children: ReactNode }) => (
  <div className="shell">
    <a className="shell-skip" href="#main">
      {words.skip}
    </a>
    <header className="shell-head">
      <Link href={pages.start} className="shell-name">
        <Mark />
        {words.name}
      </Link>
      <nav aria-label={words.nav} className="shell-nav">
        <Place href={pages.bed} also={pages.start}>
          {words.bed}
        </Place>
        <Place href={pages.book} also={pages.entry}>
          {words.book}
        </Place>
        <Place href={pages.machine}>{words.machine}</Place>
      </nav>
      <SendingSign />
    </header>
    <main id="main" tabIndex={-1}>
      <Troubles />
      {children}
    </main>
  </div>
);

interface PlaceProps {
  readonly href: string;
  /** Where the same screen stands too. */
  readonly also?: string;
  readonly children: ReactNode;
}

const Place = ({ href, also = href, children }: PlaceProps) => {
  const [here] = useRoute(href);
  const [alsoHere] = useRoute(also);
  return (
    <Link href={href} className="shell-place" aria-current={here || alsoHere ? 'page' : undefined}>
      {children}
    </Link>
  );
};

/** A sheet from which a piece has dropped. */
const Mark = () => (
  <svg className="shell-mark" viewBox="0 0 32 32" aria-hidden="true">
    <path className="shell-mark-sheet" fillRule="evenodd" d="M2 2h28v28H2zM8 8v7h6v9h4v-9h6V8z" />
  </svg>
);
