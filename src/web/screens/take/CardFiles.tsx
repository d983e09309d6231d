import { cardFileKinds, isMachineFileKind, machineFiles } from '../../../formats/machineFiles.ts';
import { cardDrawing } from '../../../core/card/cardDrawing.ts';
import type { Card } from '../../../core/card/card.ts';
import { plainDialect } from '../../../core/dialect/gcodeDialect.ts';
import type { Study } from '../../../core/study/study.ts';
import { gcodeRefusal } from '../../../formats/gcode/gcodeRefusal.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { addressOf } from '../../../wire/route.ts';
import { takeText as words } from '../../../words/texts.ts';
import { DownloadLink } from '../../parts/action/DownloadLink.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { unitsInAddress } from '../../state/units.ts';
import { usePageStoreState } from '../../state/workshop.tsx';

/** The card as files; they are drawn by the workshop computer, so it must have the card first. */
export const CardFiles = ({ study, card }: { readonly study: Study; readonly card: Card }) => {
  const { waiting } = usePageStoreState();
  const noGcode = gcodeRefusal(cardDrawing(card), study.machine.gcode ?? plainDialect);
  return (
    <Section title={words.files}>
      {waiting > 0 ? (
        <p>{words.saving}</p>
      ) : (
        <div className="actions">
          {cardFileKinds
            .filter((kind) => kind !== 'gcode' || noGcode === undefined)
            .map((kind) => (
              <DownloadLink
                key={kind}
                href={addressOf(
                  pageApi.cardFile,
                  { id: study.id, code: card.code, kind },
                  kind === 'pdf' ? { units: unitsInAddress() } : {},
                )}
                fileName={`card-${card.code}.${kind}`}
              >
                {isMachineFileKind(kind) ? machineFiles[kind].name : words.fileKinds[kind]}
              </DownloadLink>
            ))}
        </div>
      )}
      {noGcode === undefined ? null : <ProblemNotice tone="care" problem={noGcode} />}
      <p className="small soft">{words.filesMore}</p>
    </Section>
  );
};
