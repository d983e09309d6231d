import { useEffect, useState } from 'react';
import type { DrawingGrown } from '../../../app/drawing/growDrawing.ts';
import type { Outcome } from '../../../core/problem.ts';
import { refuseBySize } from '../../../formats/drawingSize.ts';
import type { DrawingTextKind } from '../../../formats/drawingText.ts';
import { kerfText as words, shellText } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { FilePick } from '../../parts/file/FilePick.tsx';
import { ProblemNotice } from '../../parts/notice/Notice.tsx';
import { Section } from '../../parts/page/Page.tsx';
import { Said } from '../../parts/said/Said.tsx';
import { saveText } from '../../state/saveText.ts';

const kinds = { svg: 'image/svg+xml', dxf: 'image/vnd.dxf' } as const satisfies Record<
  DrawingTextKind,
  string
>;

interface Picked {
  readonly name: string;
  readonly text: string;
}

/** The person's own drawing with its lines moved off its parts, given back as SVG or DXF. `kerfMm` absent: not known yet. */
export const GrowOwn = ({ kerfMm }: { readonly kerfMm: number | undefined }) => {
  const [picked, setPicked] = useState<Picked>();
  const grown = useGrown(picked, kerfMm);
  return (
    <Section title={words.drawing}>
      <p className="soft">{words.drawingMore}</p>
      {kerfMm === undefined ? (
        <p className="soft">{words.drawingWaits}</p>
      ) : (
        <FilePick
          label={words.pick}
          accept=".svg,.dxf"
          refuse={refuseBySize}
          onText={(name, text) => setPicked({ name, text })}
        />
      )}
      {picked === undefined || kerfMm === undefined ? null : grown === undefined ? (
        <p>{shellText.loading}</p>
      ) : grown.ok ? (
        <Grown grown={grown.value} name={picked.name} />
      ) : (
        <ProblemNotice tone="stop" problem={grown.problem} />
      )}
    </Section>
  );
};

const Grown = ({ grown, name }: { readonly grown: DrawingGrown; readonly name: string }) => {
  const save = (kind: DrawingTextKind): void => {
    void import('../../../formats/drawingText.ts').then(({ drawingText }) => {
      const bare = name.replace(/\.[a-z]+$/i, '');
      saveText(`${bare}-kerf.${kind}`, kinds[kind], drawingText(grown.drawing, kind, bare));
    });
  };
  return (
    <>
      <Said what="answer">
        <p>
          <strong>{words.grown(grown.parts, grown.rest)}</strong>
        </p>
      </Said>
      {grown.remarks.map((remark) => (
        <ProblemNotice key={remark.code} tone="care" problem={remark} />
      ))}
      <div className="actions">
        {(['svg', 'dxf'] as const).map((kind) => (
          <Action key={kind} onPress={() => save(kind)}>
            {words.save(kind)}
          </Action>
        ))}
      </div>
    </>
  );
};

/** What moves drawings is fetched once there is one. */
const useGrown = (
  picked: Picked | undefined,
  kerfMm: number | undefined,
): Outcome<DrawingGrown> | undefined => {
  const [grown, setGrown] = useState<{ of: Picked; kerfMm: number; made: Outcome<DrawingGrown> }>();
  useEffect(() => {
    if (picked === undefined || kerfMm === undefined) return;
    let isWanted = true;
    void import('../../../app/drawing/growDrawing.ts').then(({ growDrawing }) => {
      const made = growDrawing({ text: picked.text, kerfMm });
      if (isWanted) setGrown({ of: picked, kerfMm, made });
    });
    return () => {
      isWanted = false;
    };
  }, [picked, kerfMm]);
  return grown?.of === picked && grown?.kerfMm === kerfMm ? grown?.made : undefined;
};
