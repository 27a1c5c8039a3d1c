/** Values that programs choke on, as raw JSON; the dear ones apart, to be used seldom. */

const quoted = (text: string): string => JSON.stringify(text);
const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);

/** Raw values. */
export const hostileValues: readonly string[] = [
  ...['1e308', '-1e308', '1.7976931348623157e308', '1e999', '-1e999', '-0', '0', '5e-324', '1e-320', '-1e-320', '1e-9'],
  ...[
    '9007199254740993',
    '-9007199254740993',
    '4294967296',
    '2147483648',
    '0.1',
    '-1',
    '1',
    '2',
    '1e21',
    '1E+2',
    '0.0',
  ],
  ...['null', 'true', 'false', '[]', '{}', '[null]', '[[]]', '[{}]', '{"":0}', '[0,1]', '{"0":0,"length":1}'],
  ...['"Infinity"', '"NaN"', '"-Infinity"', '"1e5"', '"0x10"', '"1,5"', '""', '" "', '"null"', '"true"', '"a"'],
  ...['"\\u0000"', '"\\ud800"', '"\\udc00x"', '"\\uFEFF"', '"\\u202e"', '"\\u2028"', '"__proto__"', '"constructor"'],
  ...[
    '"<script>alert(1)</script>"',
    '"../../etc/passwd"',
    '"%00"',
    '"=1+1"',
    '"$(id)"',
    '"{{a}}"',
    '"\\\\\\\\host\\\\c$"',
  ],
  ...[
    'NaN',
    'Infinity',
    '-Infinity',
    'undefined',
    '0x10',
    '.5',
    '1.',
    '+1',
    '01',
    "'a'",
    '"\u0007"',
    '"\\x41"',
    'True',
    '',
  ],
  ...[
    quoted('é'.normalize('NFD')),
    quoted('👩‍👩‍👧'),
    quoted('\ud83d'),
    quoted('a'.repeat(61)),
    quoted('x'.repeat(5000)),
  ],
  ...['{"__proto__":{"polluted":1}}', '{"constructor":{"prototype":{"polluted":1}}}', '{"toString":1,"valueOf":2}'],
  ...['{"hasOwnProperty":null}', '{"toJSON":1}', '{"then":1}', '{"kind":"flighted"}', '{"value":1,"low":2,"high":0}'],
  ...[nested(60), nested(66), `1${'0'.repeat(400)}`, `0.${'0'.repeat(400)}1`, `1${'0'.repeat(308)}`],
];

/** Raw values of a megabyte or so. */
export const dearValues: readonly (() => string)[] = [
  () => nested(100_000),
  () => '['.repeat(100_000),
  () => '{"a":'.repeat(50_000),
  () => `[${'0,'.repeat(100_000)}0]`,
  () => `[${'{},'.repeat(100_000)}{}]`,
  () => quoted('x'.repeat(1_000_000)),
  () => `"${'\\u0041'.repeat(100_000)}"`,
  () => `1${'0'.repeat(500_000)}`,
  () => `{${Array.from({ length: 6000 }, (_, i) => `"k${i}":${i}`).join(',')}}`,
  () => ' '.repeat(1_000_000),
  () => `[${'{"value":1,"low":2,"high":0},'.repeat(20_000)}0]`,
];

/** Raw keys. */
export const hostileKeys: readonly string[] = [
  ...[
    '"__proto__"',
    '"constructor"',
    '"prototype"',
    '"\\u005f_proto__"',
    '"toString"',
    '"valueOf"',
    '"hasOwnProperty"',
  ],
  ...[
    '"length"',
    '""',
    '" "',
    '"\\u0000"',
    '"\\ud800"',
    '"0"',
    '"-1"',
    '"id"',
    '"kind"',
    '"value"',
    '"toJSON"',
    '"then"',
  ],
  ...['"__defineGetter__"', '"then"', '"é"', quoted('k'.repeat(3000)), "'a'", 'a', '1'],
];

/** Characters and pieces that are put between others. */
export const hostilePieces: readonly string[] = [
  ...['\uFEFF', '\0', '\ud800', '\udfff', '\u2028', '\u0085', '\r', '\r\n', '\n\n', '\t', '\v', '\u00a0', '\u202f'],
  ...[
    '"',
    '""',
    "'",
    '\\',
    '\\u',
    '{',
    '}',
    '[',
    ']',
    ',',
    ':',
    ';',
    '|',
    '/',
    '//',
    '/*',
    '#',
    '=',
    '-',
    '+',
    '.',
    ',,',
  ],
  ...['e', 'E9', '1e9', '0', '00', '9'.repeat(30), '−', '½', '⁄', 'µ', '°', '%', '٣', '１', 'NaN', 'null', '<', '&'],
];
