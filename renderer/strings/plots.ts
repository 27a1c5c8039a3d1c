/** Words of the menu that every plot has. */

/** Texts. */
export const plotText = {
  menu: (plot: string) => `Actions for the plot: ${plot}`,
  help: 'Drag to zoom, double-click for the whole; with keys: plus, minus, 0, arrows read',
  zoomIn: 'Zoom in',
  zoomOut: 'Zoom out',
  whole: 'Whole range',
  picture: 'Copy as picture',
  data: 'Copy as data',
  copiedPicture: 'The picture is on the clipboard.',
  savedPicture: (name: string) => `The clipboard takes no pictures here, so it was saved as ${name}.`,
  copiedData: (rows: number) => `${rows} rows are on the clipboard, ready for a spreadsheet.`,
  savedData: (name: string) => `The clipboard cannot be written here, so the data were saved as ${name}.`,
  failed: 'The plot could not be copied:',
  roll: 'plot',
} as const;
