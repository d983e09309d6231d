import { causes } from '../../../core/watch/laserOrWood.ts';
import { watchText as words } from '../../../words/texts.ts';
import { More } from '../../parts/more/More.tsx';
import { Notice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import type { Watched } from './useWatch.ts';

/** Laser or wood, with a bar for each share; and what to look at, each with its cautions. Nothing where nothing is amiss. */
export const CauseSays = ({ watched }: { readonly watched: Watched }) => {
  const { cause, looks } = watched;
  if (cause === undefined && looks.length === 0) return null;
  return (
    <Section title={words.cause}>
      {cause === undefined ? (
        <p>{words.causeWants}</p>
      ) : (
        <>
          <Notice tone="say" title={cause.message}>
            <p>{cause.more}</p>
          </Notice>
          <ul className="watch-shares">
            {causes.map((name) => (
              <li key={name}>
                <span>{words.causes[name]}</span>
                <span className="watch-bar" aria-hidden="true">
                  <span style={{ width: `${String(100 * cause.share[name])}%` }} />
                </span>
                <span className="figure-text">{words.share(cause.share[name])}</span>
              </li>
            ))}
          </ul>
          <More title={words.causeHow}>
            <p>{words.causeHowMore}</p>
          </More>
        </>
      )}
      {looks.length === 0 ? null : (
        <>
          <h3>{words.lookAt}</h3>
          <ol className="watch-looks">
            {looks.map(({ name, how, cautions }) => (
              <li key={name}>
                <b>{name}</b> {how}
                {cautions.map((caution) => (
                  <p key={caution} className="watch-caution">
                    <span className="watch-caution-sign" aria-hidden="true">
                      !
                    </span>
                    {caution}
                  </p>
                ))}
              </li>
            ))}
          </ol>
        </>
      )}
    </Section>
  );
};
