import { pageApi } from '../../../wire/pageApi.ts';
import { cornerPowerPct } from '../../../core/machine/setting.ts';
import {
  cornersSentences,
  drawingSentence,
  kindSentence,
  neverSentence,
  noPlaces,
  placeSentence,
  promiseSentences,
  proofText as words,
  timeSentence,
} from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { Said } from '../../parts/said/Said.tsx';
import type { PaintedProof } from '../../worker/paintPicture.ts';
import { CutGroups } from './CutGroups.tsx';
import { ProofPicture } from './ProofPicture.tsx';

export interface ProofResultProps {
  readonly name: string;
  readonly proof: PaintedProof;
  /** The proof is older than what is asked now. */
  readonly isBehind: boolean;
  readonly leaveOut: readonly string[];
  /** The length of cut that the sheet's promise is for, where anybody said; a drawing may tell it. */
  readonly promisedMm: number | undefined;
  readonly onLength: (partLengthMm: number) => void;
  /** Absent: another drawing was picked since. */
  readonly onCut: ((leaveOut: readonly string[]) => void) | undefined;
  readonly onCorners: (minPowerPct: number) => void;
  /** Where a card is made that tries powers in corners. */
  readonly cornersCardHref: string;
}

/** What a setting will do to a drawing: the picture with its places, the promise, the corners, the time. */
export const ProofResult = (props: ProofResultProps) => {
  const { name, proof, isBehind, leaveOut, onCut, onCorners, cornersCardHref } = props;
  return (
    <div className="proof-result" aria-busy={isBehind}>
      <div className="proof-left">
        <Section title={words.slows}>
          <p className="soft">
            {name}: {drawingSentence(proof)} {words.used(proof.setting)}.
          </p>
          <ProofPicture proof={proof} />
        </Section>
        {onCut === undefined ? null : (
          <CutGroups groups={proof.groups} leaveOut={leaveOut} onCut={onCut} />
        )}
      </div>
      <div className="proof-right">
        <Places proof={proof} />
        <Promised proof={proof} promisedMm={props.promisedMm} onLength={props.onLength} />
        <Corners proof={proof} onCorners={onCorners} cornersCardHref={cornersCardHref} />
        <Section title={words.time}>
          <p className="figure-text">{timeSentence(proof)}</p>
          {proof.motion === 'assumed' ? <p className="soft small">{words.assumed}</p> : null}
        </Section>
        <Remarks proof={proof} />
        <Notice tone="care">
          <p>{words.estimate}</p>
        </Notice>
      </div>
    </div>
  );
};

const Places = ({ proof }: { readonly proof: PaintedProof }) => {
  const { places, neverAtSpeed, setting } = proof;
  return (
    <Section title={words.places}>
      {places.groups.length === 0 ? (
        <p>{noPlaces(places.slowed)}</p>
      ) : (
        <ol className="proof-places">
          {places.groups.map((group) => (
            <li key={group.number}>
              <span aria-hidden="true" className={`proof-number proof-mark-${group.verdict}`}>
                {group.number}
              </span>
              <span>{placeSentence(group, setting.speedMmPerS)}</span>
            </li>
          ))}
        </ol>
      )}
      {places.groupsLeftOut > 0 ? <p className="soft">{words.more(places.groupsLeftOut)}</p> : null}
      {neverAtSpeed === undefined ? null : <p>{neverSentence(neverAtSpeed)}</p>}
    </Section>
  );
};

const Promised = ({
  proof: { promise, noPromise },
  promisedMm,
  onLength,
}: Pick<ProofResultProps, 'proof' | 'promisedMm' | 'onLength'>) => {
  if (promise === undefined) {
    return (
      <Section title={words.noPromise}>
        {noPromise === undefined ? (
          <p>{words.noParts}</p>
        ) : (
          <ProblemNotice problem={noPromise} tone="care" />
        )}
      </Section>
    );
  }
  const [knives, flaws] = promiseSentences(promise);
  return (
    <Section title={words.promise}>
      <Said what="answer" className="proof-promise">
        {knives}
      </Said>
      <ul className="proof-kinds">
        {promise.kinds.map((kind, i) => (
          <li key={i}>{kindSentence(kind, promise.outOf100)}</li>
        ))}
      </ul>
      <p className="soft">{flaws}</p>
      {promisedMm === undefined ? null : <p>{words.promisedFor(promisedMm)}</p>}
      {promise.kinds
        .map(({ cutMm }) => Math.round(cutMm))
        .filter((mm) => mm !== promisedMm)
        .map((mm) => (
          <div key={mm} className="actions">
            <Action kind="quiet" calls={pageApi.changeStudy} onPress={() => onLength(mm)}>
              {words.promiseFor(mm)}
            </Action>
          </div>
        ))}
    </Section>
  );
};

const Corners = ({
  proof: { corners, cornersBy, setting },
  onCorners,
  cornersCardHref,
}: Pick<ProofResultProps, 'proof' | 'onCorners' | 'cornersCardHref'>) => {
  if (corners === undefined) return null;
  const { places } = corners;
  const best = corners.rampStart === 'unknown' ? undefined : corners.best;
  return (
    <Section title={words.corners}>
      {cornersSentences(corners, setting.powerPct).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {cornersBy === 'card' ? <p className="soft small">{words.cornersByCard}</p> : null}
      {best === undefined ? (
        <div className="actions">
          <ActionLink href={cornersCardHref}>{words.cornersCard}</ActionLink>
        </div>
      ) : (
        <p className="soft small">{words.cornersSample(places)}</p>
      )}
      {best === undefined || best.minPowerPct === cornerPowerPct(setting) ? null : (
        <div className="actions">
          <Action onPress={() => onCorners(best.minPowerPct)}>
            {words.useCorners(best.minPowerPct)}
          </Action>
        </div>
      )}
    </Section>
  );
};

const Remarks = ({ proof: { remarks, noticed } }: { readonly proof: PaintedProof }) => {
  const all = [...remarks, ...noticed];
  if (all.length === 0) return null;
  return (
    <Section title={words.remarks}>
      <div className="stack">
        {all.map((remark, i) => (
          <ProblemNotice key={`${remark.code}${String(i)}`} problem={remark} tone="care" />
        ))}
      </div>
    </Section>
  );
};
