/** The one door into core: other folders import from here and nowhere deeper. */

export * from './result.ts';
