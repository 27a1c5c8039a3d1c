/** A strict reading of JSON text before it is trusted: where the first fault stands, and what must never be let in. */

/** The first reason against a JSON text. */
export interface JsonFault {
  readonly code: 'syntax' | 'too-deep' | 'too-much' | 'forbidden-key' | 'duplicate-key';
  readonly message: string;
  /** UTF-16 offset into the text */
  readonly offset: number;
}

/** Most values in a text, and most keys in one object: a file that is full to its limits has fewer. */
const [mostValues, mostKeys] = [2_000_000, 5000];
/** Longest key, characters: it is said wherever something below it is wrong. */
const longestKey = 200;

/** Keys that could reach into an object's prototype when data are merged. */
const forbiddenKeys = new Set(['__proto__', 'constructor', 'prototype']);

class Fault extends Error {
  readonly code: JsonFault['code'];
  readonly offset: number;
  constructor(code: JsonFault['code'], message: string, offset: number) {
    super(message);
    this.code = code;
    this.offset = offset;
  }
}

const literals: Readonly<Partial<Record<string, string>>> = { t: 'true', f: 'false', n: 'null' };
const numberAt = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const escapeAt = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const quote = 0x22;
const backslash = 0x5c;
const [tabulator, lineFeed, carriageReturn, blank] = [0x09, 0x0a, 0x0d, 0x20];

class Scanner {
  private at = 0;
  private values = 0;
  private readonly text: string;
  private readonly maxDepth: number;
  constructor(text: string, maxDepth: number) {
    this.text = text;
    this.maxDepth = maxDepth;
  }

  document(): void {
    this.value(0);
    if (this.at < this.text.length) throw this.syntax('Text follows the end of the document.');
  }

  private syntax(message: string, offset = this.at): Fault {
    return new Fault('syntax', message, offset);
  }

  private skip(pattern: RegExp): boolean {
    pattern.lastIndex = this.at;
    if (!pattern.test(this.text)) return false;
    this.at = pattern.lastIndex;
    return true;
  }

  private space(): void {
    for (;;) {
      const code = this.text.charCodeAt(this.at);
      if (code !== blank && code !== lineFeed && code !== carriageReturn && code !== tabulator) return;
      this.at += 1;
    }
  }

  private value(depth: number): void {
    this.space();
    if (depth > this.maxDepth) {
      throw new Fault('too-deep', `Values are nested more than ${this.maxDepth} deep.`, this.at);
    }
    this.values += 1;
    if (this.values > mostValues) {
      throw new Fault('too-much', `There are more than ${mostValues / 1e6} million values.`, this.at);
    }
    const first = this.text[this.at];
    if (first === '{') this.object(depth);
    else if (first === '[') this.array(depth);
    else if (first === '"') this.string();
    else this.word(first);
    this.space();
  }

  private word(first: string | undefined): void {
    if (first === undefined) throw this.syntax('The text ends where a value is expected.');
    this.refuseComment();
    const literal = literals[first];
    if (literal !== undefined && this.text.startsWith(literal, this.at)) this.at += literal.length;
    else if (!this.skip(numberAt)) throw this.syntax(`A value is expected, not "${first}".`);
  }

  /** Walks the string by hand: one pattern for a string of megabytes could exhaust the pattern engine's stack. */
  private string(): string {
    const start = this.at;
    if (this.text[start] !== '"') throw this.syntax('A text in double quotes is expected.');
    this.at += 1;
    for (;;) {
      const code = this.text.charCodeAt(this.at);
      if (code === quote) break;
      if (code === backslash) {
        if (!this.skip(escapeAt)) throw this.syntax('This escape is not known to JSON.');
      } else if (code >= 0x20) this.at += 1;
      else
        throw this.syntax(
          Number.isNaN(code) ? 'The text in quotes is not closed.' : 'A control character stands in a text.',
        );
    }
    this.at += 1;
    return this.text.slice(start, this.at);
  }

  private array(depth: number): void {
    this.at += 1;
    this.space();
    if (this.text[this.at] === ']') {
      this.at += 1;
      return;
    }
    let isFirst = true;
    do {
      this.space();
      this.refuseComma(!isFirst, ']');
      isFirst = false;
      this.value(depth + 1);
    } while (this.comma(']'));
  }

  private object(depth: number): void {
    this.at += 1;
    this.space();
    if (this.text[this.at] === '}') {
      this.at += 1;
      return;
    }
    const seen = new Set<string>();
    do {
      this.space();
      this.refuseComma(seen.size > 0, '}');
      this.key(seen);
      this.space();
      if (this.text[this.at] !== ':') throw this.syntax('A colon is expected after the key.');
      this.at += 1;
      this.value(depth + 1);
    } while (this.comma('}'));
  }

  /** Commas that other notations allow, told apart from what else may be wrong where an item is expected. */
  private refuseComma(afterComma: boolean, close: ']' | '}'): void {
    if (!afterComma) return;
    const next = this.text[this.at] ?? '';
    if (next === close) throw this.syntax('No comma may stand after the last item: take it away.');
    if (close === '}' && /[0-9]/.test(next) && /^[0-9],$/.test(this.text.slice(this.at - 2, this.at))) {
      throw this.syntax('Decimals are written with a point: 0.1, not 0,1.');
    }
  }

  private refuseComment(): void {
    if (this.text[this.at] === '/') throw this.syntax('No comments may stand in JSON: take them away.');
  }

  private key(seen: Set<string>): void {
    const start = this.at;
    this.refuseComment();
    const key = String(JSON.parse(this.string()));
    if (key.length > longestKey) {
      throw new Fault('too-much', `A key has more than ${longestKey} characters.`, start);
    }
    if (forbiddenKeys.has(key)) throw new Fault('forbidden-key', `The key "${key}" is not allowed.`, start);
    if (seen.has(key)) throw new Fault('duplicate-key', `The key "${key}" stands twice in one object.`, start);
    seen.add(key);
    if (seen.size > mostKeys) throw new Fault('too-much', `One object has more than ${mostKeys} keys.`, start);
  }

  /** True where another item follows, false at the closing bracket. */
  private comma(close: string): boolean {
    const next = this.text[this.at];
    if (next !== ',' && next !== close) throw this.syntax(`A comma or "${close}" is expected.`);
    this.at += 1;
    return next === ',';
  }
}

/**
 * Looks for the first fault of a JSON text.
 * @param text the document, without byte order mark
 * @param maxDepth deepest nesting of objects and arrays that is let in
 * @returns the fault, or null where JSON.parse may be used
 * Grammar: RFC 8259.
 */
export function findJsonFault(text: string, maxDepth: number): JsonFault | null {
  try {
    new Scanner(text, maxDepth).document();
    return null;
  } catch (fault) {
    if (fault instanceof Fault) return { code: fault.code, message: fault.message, offset: fault.offset };
    throw fault;
  }
}

/** Line and column, both from 1, of an offset. */
export function lineAndColumn(text: string, offset: number): { readonly line: number; readonly column: number } {
  let line = 1;
  let start = 0;
  for (let at = 0; at < offset; at++) {
    const code = text.charCodeAt(at);
    // the line feed of a pair ends its line, the carriage return before it does not
    if (code !== lineFeed && (code !== carriageReturn || (at + 1 < offset && text.charCodeAt(at + 1) === lineFeed)))
      continue;
    line++;
    start = at + 1;
  }
  return { line, column: offset - start + 1 };
}
