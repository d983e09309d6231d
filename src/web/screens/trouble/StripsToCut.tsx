import { bookText, troubleText as words } from '../../../words/texts.ts';
import { ActionLink } from '../../parts/action/Action.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { StandingRun } from '../../parts/standing/StandingSays.tsx';
import { useBook, useHome } from '../../state/queries.ts';
import { pageAt, pages } from '../../state/pages.ts';

/** More than that are found in the book. */
const mostNamed = 5;

/** The kept settings, that of the sheet on the bed first: each leads to its own strip. */
export const StripsToCut = () => {
  const { data: home } = useHome();
  const { data } = useBook({ limit: mostNamed });
  const { kept, standing } = home?.latest ?? {};
  const onBed = kept?.id;
  const others = (data?.entries ?? []).filter(({ entry }) => entry.id !== onBed);
  const entries =
    kept === undefined || standing === undefined ? others : [{ entry: kept, standing }, ...others];
  if (entries.length === 0) return null;
  return (
    <Section title={words.which}>
      <p>{words.whichMore}</p>
      <ul className="sheets">
        {entries.slice(0, mostNamed).map(({ entry, standing }) => (
          <li key={entry.id}>
            <span>
              {bookText.stock(
                entry.holdsFor.material,
                entry.holdsFor.nominalThicknessMm,
                entry.holdsFor.measuredThicknessMm,
              )}
              : <StandingRun standing={standing} kept={entry.setting} />
            </span>
            <span className="actions">
              <ActionLink
                kind={entry.id === onBed ? 'strong' : 'plain'}
                href={`${pageAt(pages.entry, { id: entry.id })}#strip`}
              >
                {words.strip}
              </ActionLink>
              <ActionLink href={`${pageAt(pages.entry, { id: entry.id })}#count`}>
                {words.countIt}
              </ActionLink>
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
};
