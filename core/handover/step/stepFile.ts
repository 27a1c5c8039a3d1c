/** Bodies as the text of a STEP file, read back and checked before anyone gets it. */

import type { BrepKernel, KernelShape } from './kernel.ts';
import { type BodyFigures, measureBody } from './sewn.ts';

/** Application protocols of ISO 10303 that can be written. */
export type StepSchema = 'AP214' | 'AP242';

/** A body with its name in the file. */
export interface NamedBody {
  readonly name: string;
  readonly shape: KernelShape;
}

/** What stands in a file's head. */
export interface StepHead {
  readonly fileName: string;
  readonly description: string;
  /** YYYY-MM-DD */
  readonly date: string;
}

/** Largest relative difference of a volume from the analytic one, and after reading back. */
export const volumeTolerance = 1e-4;

const schemaWords: Readonly<Record<StepSchema, string>> = { AP214: 'AP214IS', AP242: 'AP242DIS' };
const path = 'handover.step';

/** Text as a string of the file: plain letters only, apostrophes doubled (ISO 10303-21). */
export const stepText = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/ß/g, 'ss')
    .replace(/[“”„]/g, '"')
    .replace(/[^\x20-\x7e]/g, '')
    .replace(/\\/g, '/')
    .replace(/'/g, "''");

/** The head with our description, day and program in the place of the kernel's, and products without its running number. */
export function withHead(text: string, head: StepHead): string {
  const description = `FILE_DESCRIPTION(('${stepText(head.description)}'),'2;1');`;
  const name = `FILE_NAME('${stepText(head.fileName)}','${head.date}T00:00:00',(''),(''),'','Augerwright','');`;
  return text
    .replace(/FILE_DESCRIPTION\([\s\S]*?\);/, () => description)
    .replace(/FILE_NAME\([\s\S]*?\);/, () => name)
    .replace(/\bPRODUCT\(\s*'((?:[^']|'')*)\s\d+',\s*'((?:[^']|'')*)\s\d+'/g, "PRODUCT('$1','$2'");
}

/** Writes bodies (mm) as one file, a product each; a sentence where the kernel refuses. */
export function writeStep(kernel: BrepKernel, bodies: readonly NamedBody[], schema: StepSchema): string | Uint8Array {
  const { Interface_Static, IFSelect_ReturnStatus, STEPControl_StepModelType } = kernel;
  const writer = new kernel.STEPControl_Writer();
  // the words are known to the kernel only after a writer was made; a schema is taken up by the next one
  Interface_Static.SetCVal('write.step.schema', schemaWords[schema]);
  Interface_Static.SetCVal('write.step.unit', 'MM');
  writer.delete();
  const second = new kernel.STEPControl_Writer();
  for (const { name, shape } of bodies) {
    Interface_Static.SetCVal('write.step.product.name', stepText(name));
    const mode = STEPControl_StepModelType.STEPControl_AsIs;
    const status = second.Transfer(shape, mode, true, new kernel.Message_ProgressRange());
    if (status !== IFSelect_ReturnStatus.IFSelect_RetDone) return `the ${name} could not be put into the file`;
  }
  const written = second.Write(path);
  second.delete();
  if (written !== IFSelect_ReturnStatus.IFSelect_RetDone) return 'the file could not be written';
  const bytes = kernel.FS.readFile(path).slice();
  kernel.FS.unlink(path);
  return bytes;
}

/** Figures of what stands in a file, by reading it; null where it cannot be read. */
export function readStep(kernel: BrepKernel, bytes: Uint8Array): BodyFigures | null {
  kernel.FS.writeFile(path, bytes);
  const reader = new kernel.STEPControl_Reader();
  const status = reader.ReadFile(path);
  kernel.FS.unlink(path);
  if (status !== kernel.IFSelect_ReturnStatus.IFSelect_RetDone) return null;
  reader.TransferRoots(new kernel.Message_ProgressRange());
  const figures = measureBody(kernel, reader.OneShape());
  reader.delete();
  return figures;
}
