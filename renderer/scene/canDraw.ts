/** Whether this machine can draw in three dimensions. */

let answer: boolean | null = null;

function ask(): boolean {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false;
  }
}

/** Asked once, by making a drawing context and giving it back. */
export function canDraw(): boolean {
  answer ??= ask();
  return answer;
}
