/** The size of an element, followed. */

import { type RefObject, useEffect, useRef, useState } from 'react';

/** Inner size, px. */
export interface BoxSize {
  readonly width: number;
  readonly height: number;
}

/** A box to be measured and its size, zero until it stands. */
export function useBox(): [RefObject<HTMLDivElement | null>, BoxSize] {
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<BoxSize>({ width: 0, height: 0 });
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const observer = new ResizeObserver(() => setSize({ width: element.clientWidth, height: element.clientHeight }));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [box, size];
}
