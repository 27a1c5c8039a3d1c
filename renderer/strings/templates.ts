/** Words of the screw templates and of the new project. Texts only. */

/** Templates. */
export const templateText = {
  command: 'Screw templates …',
  title: 'A screw to start from',
  help: (bore: string, barrel: string, grain: string) =>
    `Sized for a bore of ${bore}, a barrel of ${barrel} and grains up to ${grain} (d90). Every value can be changed afterwards.`,
  keeps: 'Clearance, shank and screw material stay as they are; so does the end of the screw where it still fits.',
  kinds: {
    constant: {
      title: 'Constant depth',
      note: 'One root from end to end. Simple to cut; packs and melts least.',
    },
    tapered: {
      title: 'Tapered',
      note: 'Deep feed, a root that grows, a shallow end that meters. The usual start for granules.',
    },
    twoStage: {
      title: 'Two-stage with plain tip',
      note: 'Deep again in the middle, where pressure falls and air or vapour can leave; the end without a flight evens the melt.',
    },
    vThread: {
      title: 'V-thread',
      note: 'Leaning flanks and a narrow land, as a wood screw has. Corners are open, the channel is smaller.',
    },
    doubleStart: {
      title: 'Double start',
      note: 'Two flights side by side with a longer lead: steadier feeding, narrower channels.',
    },
  },
  tooCoarse: (grain: string) =>
    `Grains of ${grain} ask for a deeper channel than a core of 0.4 bores allows; take finer granulate or a wider bore.`,
  rules: 'How the sizes are found',
  ruleList: [
    ['Feed depth: 1.3 times the d90 grain or 0.18 bores, whichever is more', 'common practice'],
    ['Core at the feed: 0.4 bores at least', 'own choice'],
    ['Last depth: 2.5 times less than the first, 0.05 bores and three clearances at least', 'common practice'],
    ['Lead: one bore; V-thread 0.8 bores; double start 1.5 bores', 'common practice'],
    ['Land: a tenth of the bore; V-thread a twentieth', 'common practice'],
    ['Flanks of the V-thread: 25 degrees', 'from memory, of wood screws'],
    ['Second metering of the two stages: 1.5 times as deep as the first', 'common practice'],
    ['Root fillet: 0.4 times the flight’s height or the channel’s width', 'own choice'],
    ['Shares of the length: 35, 35 and 30 % for feed, compression and metering', 'common practice'],
  ],
  facts: { roots: 'Root Ø', lead: 'Lead', length: 'Length' },
  use: (id: string) => `Put into ${id}`,
  branch: 'As a new revision',
  lockedHelp: 'This revision is locked: take the screw over as a new revision.',
  step: (title: string) => `Template: ${title}`,
  branchStep: (title: string, id: string) => `Template: ${title}, as revision ${id}`,
  revisionName: (title: string) => `${title}, from template`,
  taken: (title: string) => `${title}: the screw was replaced. Undo brings the old one back.`,
  drawing: (title: string) => `Side view of the screw: ${title}`,
} as const;

/** New project. */
export const newText = {
  command: 'New project …',
  title: 'A new project',
  help: 'Seven things that cannot be guessed. All else follows from the rules below and can be changed afterwards.',
  asked: 'What is asked',
  name: 'Name',
  firstName: 'New extruder head',
  bore: 'Bore Ø',
  heated: 'Heated length',
  orifice: 'Orifice Ø',
  torque: 'Motor torque near standstill',
  gear: 'Gear ratio',
  granulate: 'Granulate',
  waiting: 'Reading the library …',
  unknownFlow: 'The viscosity of this granulate is not known: nothing that flows is predicted until it is entered.',
  tooCoarse: (grain: string) =>
    `Grains of ${grain} (d90) are too coarse for a screw of this bore: they will not enter freely. Take a wider bore or finer granulate, or create it and enter the size of yours under Granulate.`,
  between: (range: string) => `Allowed: ${range}.`,
  nameMissing: 'The project needs a name.',
  heatedRange: (range: string) => `The heated length must be 3 to 30 bores: ${range}.`,
  orificeRange: (range: string) => `The orifice must be at most half the bore: ${range}.`,
  refused: 'These answers make no machine that can be predicted:',
  assumed: 'What follows',
  value: 'Value',
  rule: 'Rule',
  source: 'Source',
  create: 'Create',
  created: (name: string) => `${name} was created. It is not saved yet.`,
  drawing: 'Side view of the first screw',
} as const;
