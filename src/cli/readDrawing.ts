import type { Toolpath } from '../core/filecheck/toolpath.ts';
import { andThen, done, type Outcome } from '../core/problem.ts';
import { refuseBySize } from '../formats/drawingSize.ts';
import { readToolpath } from '../formats/readToolpath.ts';
import { textOfBytes } from '../formats/textOfBytes.ts';
import { readBytes, sizeOfFile } from '../host/files.ts';

const utf8 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('utf8');

/** A drawing or program that a person named. */
export const readDrawing = async (file: string): Promise<Outcome<Toolpath>> =>
  andThen(await readDrawingText(file), (text) => readToolpath(text));

/** The text of one; a file that is too big is refused before any of it is read. */
export const readDrawingText = async (file: string): Promise<Outcome<string>> => {
  const bytes = await sizeOfFile(file);
  if (!bytes.ok) return bytes;
  const tooBig = refuseBySize(bytes.value);
  if (tooBig !== undefined) return tooBig;
  const content = await readBytes(file);
  return content.ok ? done(textOfBytes(content.value, utf8)) : content;
};
