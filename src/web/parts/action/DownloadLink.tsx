import { useState, type ReactNode } from 'react';
import type { Refusal } from '../../state/call.ts';
import { workshopReach } from '../../state/reach.ts';
import { handOver } from '../../state/workshopFile.ts';
import { Notice } from '../notice/Notice.tsx';
import { Action } from './Action.tsx';

export interface DownloadLinkProps {
  readonly href: string;
  readonly fileName: string;
  readonly children: ReactNode;
}

/** Saves a file. */
export const DownloadLink = (props: DownloadLinkProps) =>
  workshopReach().isServed ? (
    <a className="action action-plain" href={props.href} download={props.fileName}>
      {props.children}
    </a>
  ) : (
    <HandedOver {...props} />
  );

/** The same where no server is: the page makes the file, or says why not. */
const HandedOver = ({ href, fileName, children }: DownloadLinkProps) => {
  const [refusal, setRefusal] = useState<Refusal>();
  return (
    <>
      <Action onPress={() => void handOver(href, { fileName }).then(setRefusal)}>{children}</Action>
      {refusal === undefined ? null : (
        <Notice tone="stop" title={refusal.message}>
          <p>{refusal.remedy}</p>
        </Notice>
      )}
    </>
  );
};
