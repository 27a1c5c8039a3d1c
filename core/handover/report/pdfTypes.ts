/** The part of pdfkit that the report uses; the package ships no types. */

/** Content marked for the structure tree. */
export type PdfContent = object;

/** An element of the structure tree. */
export interface PdfStruct {
  add(child: PdfStruct | PdfContent): unknown;
  end(): void;
}

/** An entry of the outline. */
export interface PdfOutline {
  addItem(title: string, options?: object): PdfOutline;
}

/** A document. */
export interface PdfPaper {
  readonly outline: PdfOutline;
  on(event: 'data', hear: (chunk: Uint8Array) => void): unknown;
  on(event: 'end', hear: () => void): unknown;
  on(event: 'error', hear: (error: unknown) => void): unknown;
  addPage(): unknown;
  switchToPage(page: number): unknown;
  bufferedPageRange(): { readonly start: number; readonly count: number };
  font(name: string): unknown;
  fontSize(size: number): unknown;
  widthOfString(text: string): number;
  text(text: string, x: number, y: number, options: object): unknown;
  fillColor(colour: string): unknown;
  save(): unknown;
  restore(): unknown;
  rotate(degrees: number, options: { readonly origin: readonly [number, number] }): unknown;
  moveTo(x: number, y: number): unknown;
  lineTo(x: number, y: number): unknown;
  closePath(): unknown;
  rect(x: number, y: number, width: number, height: number): unknown;
  lineWidth(width: number): unknown;
  lineJoin(join: 'round'): unknown;
  dash(first: readonly number[], options: object): unknown;
  undash(): unknown;
  fill(colour: string): unknown;
  stroke(colour: string): unknown;
  fillAndStroke(fill: string, stroke: string): unknown;
  struct(type: string, options?: object): PdfStruct;
  addStructure(element: PdfStruct): unknown;
  markStructureContent(tag: string): PdfContent;
  markContent(tag: 'Artifact', options: { readonly type: string }): unknown;
  endMarkedContent(): unknown;
  goTo(x: number, y: number, width: number, height: number, name: string, options?: object): unknown;
  addNamedDestination(name: string, kind: 'XYZ', x: number, y: number, zoom: null): unknown;
  end(): void;
}

/** pdfkit's document class. */
export type PdfPaperClass = new (options: object) => PdfPaper;
