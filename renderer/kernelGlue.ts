/**
 * Build step for the solid kernel's JavaScript: it makes its two kinds of callers by `new Function`, which the content
 * policy forbids. They are replaced by closures that do the same; a build with another version of the kernel stops
 * unless both are found exactly once.
 */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

/** Text that is prepended: the closures. Names as in the glue's own generator. */
const closures = `
function plainInvoker(parts, names, count, isMethod, hasDestructors, returns) {
  const [, , invoker, fn, runDestructors, fromWire, toThisWire] = parts;
  const toWire = parts.slice(7, 7 + count);
  const endings = parts.slice(7 + count);
  const ended = names.slice(7 + count).map((name) => (name === 'thisWired_dtor' ? 0 : Number(/\\d+/.exec(name)[0]) + (isMethod ? 1 : 0)));
  const call = function (...given) {
    const destructors = hasDestructors ? [] : null;
    const wired = isMethod ? [toThisWire(destructors, this)] : [];
    for (let i = 0; i < count; i++) wired.push(toWire[i](destructors, given[i]));
    const result = invoker(fn, ...wired);
    if (hasDestructors) runDestructors(destructors);
    else for (let i = 0; i < endings.length; i++) endings[i](wired[ended[i]]);
    return returns ? fromWire(result) : undefined;
  };
  return Object.defineProperty(call, 'length', { value: count });
}
function plainCaller(kind, readers, isVoid, toWire, toValue, toName, wireBack) {
  return function (handle, methodName, destructors, args) {
    const given = readers.map((read, i) => read(args + 8 * i));
    let result = given[given.length - 1];
    if (kind === 0) result = toValue(handle)(...given);
    if (kind === 1) {
      const owner = toValue(handle);
      result = owner[toName(methodName)](...given);
    }
    if (kind === 2) result = Reflect.construct(toValue(handle), given);
    return isVoid ? undefined : wireBack(toWire, destructors, result);
  };
}
`;

/** What stands in the glue, and what takes its place; the letters are those of its minified names. */
const changes: readonly (readonly [string, string])[] = [
  ['b=(new Function(q,n+"}\\n"))(...d)', 'b=plainInvoker(d,q,e,k,m,c)'],
  ['c=(new Function(Object.keys(h),k))(...Object.values(h))', 'c=plainCaller(c,f,d.uc,b,Z,ed,cd)'],
  // a page has no such module; the branch is never run there
  ['await import("node:module")', 'null'],
];

/** The glue without `new Function`. Throws where a change finds not exactly one place. */
export function plainGlue(code: string): string {
  const changed = changes.reduce((text, [from, to]) => {
    const parts = text.split(from);
    if (parts.length !== 2) throw new Error(`the solid kernel's glue has ${parts.length - 1} places of: ${from}`);
    return parts.join(to);
  }, code);
  if (/\bnew Function\b/.test(changed)) throw new Error("the solid kernel's glue makes code elsewhere too");
  return closures + changed;
}

const glueName = 'replicad-opencascadejs/dist/replicad_single.js';

/** Vite plugin for pages and workers: changes the glue, and lays the kernel's licence beside its WASM. */
export function kernelGlue(): Plugin {
  return {
    name: 'kernel-glue',
    transform: (code, id) =>
      id.replace(/\\/g, '/').split('?')[0]?.endsWith(glueName) ? { code: plainGlue(code), map: null } : null,
    generateBundle() {
      const licence = join(dirname(createRequire(import.meta.url).resolve('replicad-opencascadejs')), '../LICENSE');
      this.emitFile({
        type: 'asset',
        fileName: 'assets/solid-kernel-licence.txt',
        source: readFileSync(licence, 'utf8'),
      });
    },
  };
}
