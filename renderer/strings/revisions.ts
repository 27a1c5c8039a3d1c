/** Words of the revisions: strip, list, lineage. */

/** Texts of the strip and the dialog of revisions. */
export const revisionsText = {
  title: 'Revisions',
  branch: 'Branch',
  branchFrom: (id: string) => `Branch from ${id}`,
  manage: 'Revisions …',
  compare: 'Compare …',
  all: (count: number) => `All ${count}`,
  allLabel: (count: number) => `All ${count} revisions`,
  rename: 'Name',
  note: 'Note',
  notePlaceholder: 'What was changed and why; what the bench said.',
  date: 'Date',
  datePlaceholder: '2026-03-31',
  badDate: (typed: string) =>
    `Date: “${typed}” is no date. Write year, month and day as 2026-03-31, or leave it empty. The earlier date stays.`,
  lock: 'Lock',
  unlock: 'Unlock',
  locked: 'locked',
  remove: 'Delete',
  kept: {
    last: 'The only revision stays.',
    locked: 'Unlock it before deleting it.',
    trials: 'Bench trials refer to it, so it stays.',
  },
  from: 'from',
  first: 'the beginning of a line',
  changes: (count: number, parent: string) =>
    count === 0
      ? `described like ${parent}`
      : `${count} ${count === 1 ? 'value differs' : 'values differ'} from ${parent}`,
  branches: (ids: string) => `led to ${ids}`,
  against: (parent: string) => `Compare with ${parent}`,
  use: 'Work on it',
  current: 'open now',
  copyOf: (name: string) => `${name}, next`,
  help: 'Looking at another revision is no change: it needs no saving and no undoing. Everything else here can be undone.',
} as const;
