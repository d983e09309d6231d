import { useMemo, useState } from 'react';
import { splitDrawing } from '../../../app/drawing/splitDrawing.ts';
import { plainDialect } from '../../../core/dialect/gcodeDialect.ts';
import type { Machine } from '../../../core/machine/machine.ts';
import type { Setting } from '../../../core/machine/setting.ts';
import type { Problem } from '../../../core/problem.ts';
import { refuseBySize } from '../../../formats/drawingSize.ts';
import {
  machineFileEndings,
  machineFileKinds,
  machineFiles,
  type MachineFileKind,
} from '../../../formats/machineFiles.ts';
import { essentialCautions } from '../../../words/cautions.ts';
import { settingWords, orderRunText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { FilePick } from '../../parts/file/FilePick.tsx';
import { More } from '../../parts/more/More.tsx';
import { Notice, ProblemNotice } from '../../parts/notice/Notice.tsx';
import { saveForMachine } from '../../state/saveForMachine.ts';

export interface SheetFilesProps {
  readonly machine: Machine;
  /** As planned, the main one first. */
  readonly settings: readonly { readonly setting: Setting; readonly parts: number }[];
  /** Of the sheet, from 1. */
  readonly number: number;
  /** The drawing of one sheet, where it was picked. */
  readonly drawing: string | undefined;
  readonly onDrawing: (text: string) => void;
}

const acts = ['unattended', 'fire', 'beforeCut', 'injury', 'always'] as const;

/** The user's own drawing with this sheet's settings: the parts of each on a layer of their own, inner outlines first. */
export const SheetFiles = ({ machine, settings, number, drawing, onDrawing }: SheetFilesProps) => {
  const [problem, setProblem] = useState<Problem>();
  const dialect = machine.gcode ?? plainDialect;
  const split = useMemo(
    () => (drawing === undefined ? undefined : splitDrawing({ text: drawing, settings, dialect })),
    [drawing, settings, dialect],
  );
  const sheetParts = settings.reduce((sum, { parts }) => sum + parts, 0);
  const save = async (kind: MachineFileKind): Promise<void> => {
    if (split?.ok !== true) return;
    const title = words.fileTitle(number);
    setProblem(
      await saveForMachine(`sheet-${String(number)}`, kind, {
        of: { title, plainTitle: `sheet ${String(number)}`, drawing: split.value.drawing },
        machine,
        notes: essentialCautions(acts).map(({ sentence }) => sentence),
      }),
    );
  };
  return (
    <More title={words.files} startsOpen={settings.length > 1}>
      <div className="stack">
        <p>{words.filesMore}</p>
        <FilePick
          label={words.drawing}
          accept={machineFileEndings}
          refuse={refuseBySize}
          onText={(_name, text) => onDrawing(text)}
        />
        {split === undefined ? null : split.ok ? (
          <>
            <ul className="order-layers figure-text">
              {split.value.drawing.layers
                .filter(({ kind }) => kind === 'rung')
                .map(({ rung, colour, setting, parts }) => (
                  <li key={rung}>
                    <span
                      className="order-swatch"
                      style={{ background: colour }}
                      aria-hidden="true"
                    />
                    <strong>{rung}</strong>{' '}
                    {words.layer(setting === undefined ? '' : settingWords(setting), parts.length)}
                  </li>
                ))}
            </ul>
            {split.value.parts === sheetParts ? null : (
              <Notice tone="care">
                <p>{words.otherCount(split.value.parts, sheetParts)}</p>
              </Notice>
            )}
            {split.value.rest === 0 ? null : <p className="soft">{words.rest(split.value.rest)}</p>}
            <div className="actions">
              {machineFileKinds.map((kind) => (
                <Action key={kind} onPress={() => void save(kind)}>
                  {machineFiles[kind].name}
                </Action>
              ))}
            </div>
          </>
        ) : (
          <ProblemNotice problem={split.problem} tone="stop" />
        )}
        {problem === undefined ? null : <ProblemNotice problem={problem} tone="stop" />}
      </div>
    </More>
  );
};
