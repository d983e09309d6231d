import type { Card } from '../../../core/card/card.ts';
import { addressOf, api } from '../../../wire/api.ts';
import { takeText as words } from '../../../words/en/screens/machine.ts';
import { DownloadLink } from '../../parts/action/Action.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { useKeeperState } from '../../state/workshop.tsx';

const kinds = ['svg', 'dxf', 'gcode', 'pdf', 'json'] as const;

/** The card as files; they are drawn by the workshop computer, so it must have the card first. */
export const CardFiles = ({ studyId, card }: { readonly studyId: string; readonly card: Card }) => {
  const { waiting } = useKeeperState();
  return (
    <Section title={words.files}>
      {waiting > 0 ? (
        <p role="status">{words.saving}</p>
      ) : (
        <div className="actions">
          {kinds.map((kind) => (
            <DownloadLink
              key={kind}
              href={addressOf(api.cardFile, { id: studyId, code: card.code, kind })}
              fileName={`card-${card.code}.${kind}`}
            >
              {words.fileKinds[kind]}
            </DownloadLink>
          ))}
        </div>
      )}
      <p className="small soft">{words.filesMore}</p>
    </Section>
  );
};
