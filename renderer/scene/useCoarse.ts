/** Fewer pixels while the view moves, so that it follows the hand on slow machines; the full number once it rests. */

import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import type { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';

/** Pixels per CSS pixel while moving, and rest after which the picture is drawn finely again, ms. */
const moving = { ratio: 0.7, restMs: 160 } as const;

/** Whether the browser draws without a graphics card. */
export function drawsInSoftware(gl: {
  getExtension(name: string): unknown;
  getParameter(name: number): unknown;
}): boolean {
  const info = gl.getExtension('WEBGL_debug_renderer_info') as { UNMASKED_RENDERER_WEBGL: number } | null;
  const name = info ? String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)) : '';
  return /swiftshader|llvmpipe|software|basic render/i.test(name);
}

/** Lowers the pixel ratio from the first movement to a short rest after the last one; only where a processor draws. */
export function useCoarseWhileMoving(controls: OrbitControls): void {
  const gl = useThree((state) => state.gl);
  const setDpr = useThree((state) => state.setDpr);
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    if (!drawsInSoftware(gl.getContext())) return;
    let timer: ReturnType<typeof setTimeout> | null = null;
    const fine = () => {
      timer = null;
      setDpr(Math.min(2, globalThis.devicePixelRatio || 1));
      invalidate();
    };
    const onChange = () => {
      if (timer) clearTimeout(timer);
      else setDpr(moving.ratio);
      timer = setTimeout(fine, moving.restMs);
    };
    controls.addEventListener('change', onChange);
    return () => {
      controls.removeEventListener('change', onChange);
      if (timer) clearTimeout(timer);
    };
  }, [controls, gl, setDpr, invalidate]);
}
