/** Words of the guided tour. */

/** Texts by stop. */
export const tourText = {
  command: 'Show the guided tour',
  title: 'Guided tour',
  count: (now: number, all: number) => `${now} of ${all}`,
  back: 'Back',
  next: 'Next',
  leave: 'Leave the tour',
  done: 'Start working',
  stops: {
    welcome: {
      title: 'Find out before cutting metal',
      text: 'This is an invented machine with three revisions. Everything you see is calculated from its description; change anything and undo it with Ctrl+Z. You can leave this tour now and call it back from the command list (Ctrl+K).',
    },
    describe: {
      title: 'Describe',
      text: 'The machine, part by part: granulate, screw, tip, barrel, nozzle, hopper, drive, running and print. Numbers take units: 3 mm, 1/8 in, 190 C. The line below says what each value means.',
    },
    see: {
      title: 'See',
      text: 'The head cut open. Drag to turn it, scroll to come closer. “Melt age” paints how long the melt has been on its way; pins mark where it lingers.',
    },
    along: {
      title: 'Along the axis',
      text: 'Pressure and temperatures from the feed to the orifice, to the scale of the drawing below. Pointing at one view marks the same place in all others.',
    },
    results: {
      title: 'Predict',
      text: 'What comes out, what sets that limit, and how much everything else has in reserve. An estimate answers while you type; solved fields replace it some seconds later.',
    },
    findings: {
      title: 'What is doubtful',
      text: 'Each finding says what was seen, where, why it matters and what to change. Cautions about heat, fumes, pressure and moving parts always stand here.',
    },
    revisions: {
      title: 'Decide',
      text: 'Revisions keep what was tried. Branch one before a change, compare them side by side, look for a better screw, then hand over drawings, solids and controller numbers.',
    },
  },
} as const;
