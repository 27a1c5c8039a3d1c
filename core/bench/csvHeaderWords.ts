/** Words by which columns of trials are known, English and German; the trade's usual wording. */

import type { BenchField } from './csvTypes.ts';

/** One field: names that stand for it alone, and words that hint at it inside longer headers. */
export interface HeaderWords {
  readonly field: BenchField;
  /** the whole header, tidied */
  readonly exact: RegExp;
  /** a part of it */
  readonly part: RegExp | null;
}

/** Measured temperatures and the like are not settings. */
export const notSettings =
  /\b(ambient|room|outside|melt|measured|actual|reached|strand|umgebung|raum|schmelze|masse|ist)\b/;

/** Earlier entries win where two match alike. */
export const headerWords: readonly HeaderWords[] = [
  {
    field: 'excludedWhy',
    exact: /^(excluded why|why excluded|exclusion reason|ausschlussgrund)$/,
    part: /\b(why|reason)\b/,
  },
  { field: 'excluded', exact: /^(excluded|exclude|left out|ignore|ausgeschlossen)$/, part: null },
  {
    field: 'id',
    exact:
      /^(id|trial|trial (id|no|number)|run|run (id|no|number)|no|nr|test|test (id|no)|versuch|versuch (nr|no)|lfd nr)$/,
    part: /\b(trial|versuch)\b/,
  },
  { field: 'date', exact: /^(date|day|datum|tag|when)$/, part: /\b(date|datum)\b/ },
  { field: 'revision', exact: /^(revision|rev|screw|machine|revision id|schnecke|stand)$/, part: /\brevision\b/ },
  {
    field: 'material',
    exact: /^(material|material id|granulate|granules|resin|polymer|plastic|werkstoff|kunststoff|granulat)$/,
    part: /\b(material|granulat\w*|werkstoff)\b/,
  },
  {
    field: 'lot',
    exact: /^(lot|batch|lot (no|number)|charge|charge nr|chargen nr|chargennummer)$/,
    part: /\b(lot|batch|charge)\b/,
  },
  {
    field: 'rate',
    exact: /^(rate|output|throughput|mass flow|flow rate|output rate|durchsatz|massestrom|massenstrom)$/,
    part: /\b(throughput|output|mass flow|durchsatz|massen?strom)\b/,
  },
  {
    field: 'speed',
    exact: /^(n|speed|screw speed|rpm|rev s|screw|drehzahl|schneckendrehzahl|rotation|revs|revolutions)$/,
    part: /\b(speed|rpm|drehzahl|schneckendrehzahl|revolutions)\b/,
  },
  {
    field: 'grams',
    exact: /^(m|mass|weight|grams|gram|g|kg|weighed|masse|gewicht|gramm|auswaage)$/,
    part: /\b(mass|weight|weighed|grams|masse|gewicht)\b/,
  },
  {
    field: 'seconds',
    exact: /^(t|time|duration|seconds|secs|sec|s|min|minutes|zeit|dauer|messzeit|sekunden|minuten)$/,
    part: /\b(time|duration|seconds|zeit|dauer|messzeit)\b/,
  },
  { field: 'torque', exact: /^(torque|moment|drehmoment|md)$/, part: /\b(torque|drehmoment)\b/ },
  {
    field: 'current',
    exact: /^(current|amps|amperes|i|motor current|strom|motorstrom|stromaufnahme)$/,
    part: /\b(current|strom|motorstrom)\b/,
  },
  { field: 'labL', exact: /^(cie ?)?(l|l \*|l\*|lightness|lab l|l star|helligkeit)$/, part: /\blightness\b/ },
  { field: 'labA', exact: /^(cie ?)?(a\*|a \*|lab a|a star)$/, part: null },
  { field: 'labB', exact: /^(cie ?)?(b\*|b \*|lab b|b star)$/, part: null },
  {
    field: 'tempC',
    exact:
      /^(t ?\d+|tz ?\d+|z ?\d+|zone ?\d*|zone ?\d+ (temp|temperature)|(set )?temps?|(set )?temperatures?|nozzle|die|duse|duese|temperaturen?)$/,
    part: /\b(temp|temps|temperature|temperatures|temperatur|temperaturen|zone|nozzle|duse|duese|set ?point)\b/,
  },
  { field: 'photo', exact: /^(photo|picture|image|file|foto|bild)$/, part: /\b(photo|picture|image|foto|bild)\b/ },
  {
    field: 'note',
    exact: /^(note|notes|remark|remarks|comment|comments|bemerkung|bemerkungen|notiz|kommentar)$/,
    part: /\b(notes?|remarks?|comments?|bemerkung)\b/,
  },
];
