import { pageApi } from '../../../wire/pageApi.ts';
import type { Card } from '../../../core/card/card.ts';
import type { Study } from '../../../core/study/study.ts';
import { noteText as words } from '../../../words/texts.ts';
import { NoteOf } from '../../parts/note/NoteOf.tsx';
import { withOptional } from '../../state/withOptional.ts';
import { ReadBy } from '../people/ReadBy.tsx';
import { useWorkshop } from '../../state/workshop.tsx';

export interface StudyNotesProps {
  readonly study: Study;
  readonly card: Card | undefined;
}

/** Who read the card that lies on the bench, and what was written of it and of the sheet. */
export const StudyNotes = ({ study, card }: StudyNotesProps) => {
  const { store } = useWorkshop();
  const { id: studyId, stock } = study;
  return (
    <div className="stack">
      {card === undefined ? null : <ReadBy study={study} card={card} />}
      {card === undefined ? null : (
        <NoteOf
          calls={pageApi.noteCard}
          key={card.code}
          name={`card.${studyId}.${card.code}`}
          kind="card"
          label={words.of.card(card.code)}
          note={card.note}
          onKeep={(note) =>
            store.make({ kind: 'note-card', studyId, code: card.code, note: note ?? null })
          }
        />
      )}
      <NoteOf
        calls={pageApi.changeStudy}
        name={`sheet.${studyId}`}
        kind="sheet"
        label={words.of.sheet}
        note={stock.note}
        onKeep={(note) =>
          store.make({ kind: 'head', studyId, head: { stock: withOptional(stock, 'note', note) } })
        }
      />
    </div>
  );
};
