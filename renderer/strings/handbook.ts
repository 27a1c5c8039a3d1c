/** Words of the method handbook's dialog. */

/** Texts. */
export const handbookText = {
  command: 'Method handbook',
  pages: 'Pages',
  find: 'Find in headings and text',
  none: 'No page has these words.',
  back: 'Back',
  howWorkedOut: 'How this is worked out',
};
