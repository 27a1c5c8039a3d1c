/** Search for numbers that should not be. */

/**
 * Paths of all non-finite numbers in plain data and typed arrays.
 * @param allowed paths that may hold Infinity (never NaN)
 */
export function nonFinite(data: unknown, allowed: RegExp = /^$/): string[] {
  const found: string[] = [];
  const visit = (value: unknown, path: string): void => {
    if (typeof value === 'number') {
      if (Number.isNaN(value) || (!Number.isFinite(value) && !allowed.test(path))) found.push(`${path} = ${value}`);
    } else if (ArrayBuffer.isView(value)) {
      const array = value as unknown as ArrayLike<number>;
      for (let i = 0; i < array.length; i++) visit(array[i], `${path}[${i}]`);
    } else if (value !== null && typeof value === 'object') {
      for (const [key, item] of Object.entries(value)) visit(item, path === '' ? key : `${path}.${key}`);
    }
  };
  visit(data, '');
  return found;
}
