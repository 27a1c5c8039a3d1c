/** Words of the print side. Texts only. */

/** Texts by block. */
export const printSideText = {
  title: 'Print side',
  topics: {
    demand: 'Supply against demand',
    line: 'Wall and line',
    strand: 'From orifice to layer',
    release: 'After a stop',
    cooling: 'Cooling and cracking',
    controller: 'Numbers for the controller',
  },
  signs: { good: '✓', warn: '▲', bad: '▲', unknown: '?' },
  margin: { good: 'enough', bad: 'too little' },
  line: { good: 'fits the bore', bad: 'does not suit the bore' },
  strand: { strand: 'stays a strand', sags: 'sags', drips: 'drips', unknown: 'not known' },
  crack: { low: 'stress is low', risky: 'may crack', exceeds: 'cracks', unknown: 'not known' },
  wall: (passes: number, wall: string) =>
    `Cross-section of a wall of ${wall}: ${passes} lines side by side, two layers`,
  wallThickness: 'wall',
  copy: 'Copy',
  copyOne: (label: string) => `Copy the number: ${label}`,
  copyAll: 'Copy all',
  copied: (what: string) => `Copied: ${what}`,
  notCopied: 'Copying was not allowed; mark the number and copy it by hand.',
  controllerHelp: 'From steady output at this pressure. Run a measured length or time, weigh it, and correct them.',
} as const;
