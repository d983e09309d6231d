import type { KerfCard } from '../../../core/kerf/kerfCard.ts';
import { isMachineFileKind, machineFiles, rampFileKinds } from '../../../formats/machineFiles.ts';
import { kerfSheetText, kerfText as words } from '../../../words/texts.ts';
import { DownloadLink } from '../../parts/action/DownloadLink.tsx';

export interface KerfCardFilesProps {
  readonly card: KerfCard;
  readonly address: (kind: string) => string;
}

/** The files of a comb or slot card, and what is typed in. */
export const KerfCardFiles = ({ card, address }: KerfCardFilesProps) => (
  <>
    <div className="actions">
      {rampFileKinds.map((kind) => (
        <DownloadLink
          key={kind}
          href={address(kind)}
          fileName={`${kerfSheetText.file[card.sheet.kind]}.${kind}`}
        >
          {isMachineFileKind(kind) ? machineFiles[kind].name : words.files[kind]}
        </DownloadLink>
      ))}
    </div>
    <ul className="kerf-entries figure-text">
      {kerfSheetText.entries(card).map((entry) => (
        <li key={entry}>{entry}</li>
      ))}
    </ul>
  </>
);
