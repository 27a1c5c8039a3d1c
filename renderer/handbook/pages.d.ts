/** The pages as the build makes them. */
declare module 'virtual:handbook' {
  export const pages: readonly import('../handbookPages.ts').HandbookPage[];
}
