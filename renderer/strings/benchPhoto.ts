/** Words of the colour from a picture. */

/** Texts of that part of the bench log. */
export const photoText = {
  start: 'Choose a picture that shows the strand and a plain white reference side by side, in the same light.',
  choose: 'Choose a picture …',
  tooLarge: (bytes: string, pixels: string) => `The picture is too large: at most ${bytes} and ${pixels}.`,
  unreadable: 'The picture cannot be read. JPEG, PNG and WebP work.',
  chooseOther: 'Choose another picture.',
  squares: { white: 'White reference', strand: 'Strand' },
  letters: { white: 'W', strand: 'S' },
  help: 'Drag the squares to their places. With keys: arrows move, Shift moves further, + and − change the size.',
  place: (name: string, x: number, y: number, side: number) =>
    `${name}: ${x} % from the left, ${y} % from the top, ${side} % wide`,
  whiteness: 'Lightness L* of the white',
  whitenessHelp:
    '100 is a perfect white; plain paper has about 93 to 95, a glazed white tile about 95 (common practice).',
  whiteRange: 'Give a lightness from 50 to 100.',
  result: 'Colour of the strand',
  doubts: 'Mind',
  caveats: 'What such a colour is worth',
  noGamut: 'The screen cannot show this colour exactly.',
  into: 'Take over into',
  draft: 'the trial being entered',
  take: 'Take over',
  noTrials: 'There is no trial to take it over into. Add one first.',
  taken: (id: string) => `Colour taken over into trial ${id}.`,
  canvas: 'The chosen picture with two squares to place',
} as const;
