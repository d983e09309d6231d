import type { ReactNode } from 'react';
import './page.css';

/** Two parts of a page that is `width="two"`: beside one another where the screen has room, else one below the other. */
export const Beside = ({ children }: { readonly children: readonly [ReactNode, ReactNode] }) => (
  <div className="beside">
    <div className="beside-part">{children[0]}</div>
    <div className="beside-part">{children[1]}</div>
  </div>
);
