/** What anyone who runs a flow test must know. Common practice with hot, turning machines; local rules go first. */

/** In the head of the program, on the sheet, and in the dialogue. */
export const flowCautions: readonly string[] = [
  'Stay beside the machine for the whole test, with the power switch in reach.',
  'Melt and metal burn: gloves, eye protection, nothing under the nozzle but the cup.',
  'A blocked nozzle holds pressure: never look into it, keep out of its line, switch off if nothing comes.',
  'Keep hair and sleeves from the turning screw; unplug before reaching into the hopper.',
  'Run with extraction or fresh air; the data sheet of the granulate goes before this file.',
  'Speeds come from a prediction, not from this machine: stop where it labours, squeals or skips steps.',
];
