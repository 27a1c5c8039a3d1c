/** Whether this machine can draw in three dimensions, and whether a graphics card does it. */

interface Answer {
  readonly can: boolean;
  readonly software: boolean;
}

let answer: Answer | null = null;

/** Whether a drawing context's name is that of a program instead of a card. */
const isSoftware = (name: string): boolean => /swiftshader|llvmpipe|software|basic render/i.test(name);

function ask(): Answer {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    const info = context?.getExtension('WEBGL_debug_renderer_info');
    const name = info ? String(context?.getParameter(info.UNMASKED_RENDERER_WEBGL)) : '';
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return { can: Boolean(context), software: isSoftware(name) };
  } catch {
    return { can: false, software: false };
  }
}

/** Asked once, by making a drawing context and giving it back. */
function asked(): Answer {
  answer ??= ask();
  return answer;
}

/** Whether there is 3D drawing at all. */
export const canDraw = (): boolean => asked().can;

/** Whether the processor draws, which takes its time over every pixel. */
export const drawsInSoftware = (): boolean => asked().software;
