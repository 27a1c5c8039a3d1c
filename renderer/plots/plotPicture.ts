/** A plot with its name and key as one picture. */

import type uPlot from 'uplot';

/** Colours of the picture's own parts. */
interface PictureInk {
  readonly page: string;
  readonly text: string;
}

/** Room for a line of text, px. */
const line = 18;
const edge = 8;

interface Entry {
  readonly name: string;
  readonly stroke: string;
  readonly dash: readonly number[];
  readonly width: number;
}

const strokeOf = (plot: uPlot, index: number): string => {
  const { stroke } = plot.series[index] ?? {};
  const given = typeof stroke === 'function' ? stroke(plot, index) : stroke;
  return typeof given === 'string' ? given : 'grey';
};

/** Lines of the key that are drawn, in their places. */
function entriesOf(plot: uPlot, names: readonly string[]): Entry[] {
  return plot.series.flatMap((series, index) =>
    index === 0 || series.show === false
      ? []
      : [
          {
            name: names[index] ?? '',
            stroke: strokeOf(plot, index),
            dash: series.dash ?? [],
            width: series.width ?? 2,
          },
        ],
  );
}

function drawKey(pen: CanvasRenderingContext2D, entries: readonly Entry[], width: number, top: number, text: string) {
  let [x, y] = [edge, top];
  for (const { name, stroke, dash, width: wide } of entries) {
    const takes = 30 + pen.measureText(name).width + 14;
    if (x > edge && x + takes > width - edge) [x, y] = [edge, y + line];
    pen.strokeStyle = stroke;
    pen.lineWidth = wide;
    pen.setLineDash([...dash]);
    pen.beginPath();
    pen.moveTo(x, y + line / 2);
    pen.lineTo(x + 24, y + line / 2);
    pen.stroke();
    pen.fillStyle = text;
    pen.fillText(name, x + 30, y + line / 2 + 4);
    x += takes;
  }
  return y + line;
}

/** Draws name, plot and key on a canvas of the plot's own fineness. */
export function plotPicture(plot: uPlot, name: string, names: readonly string[], ink: PictureInk): HTMLCanvasElement {
  const source = plot.ctx.canvas;
  const ratio = source.width / Math.max(1, plot.width);
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('no canvas');
  const font = '12px system-ui, sans-serif';
  pen.font = font;
  const entries = entriesOf(plot, names);
  const keyHeight = drawKey(pen, entries, plot.width, 0, ink.text);
  const top = line + edge;
  canvas.width = source.width;
  canvas.height = Math.ceil((top + keyHeight + edge) * ratio) + source.height;
  pen.scale(ratio, ratio);
  pen.fillStyle = ink.page;
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.fillStyle = ink.text;
  pen.font = `600 ${font}`;
  pen.fillText(name, edge, line, plot.width - 2 * edge);
  pen.drawImage(source, 0, top, source.width / ratio, source.height / ratio);
  pen.font = font;
  drawKey(pen, entries, plot.width, top + source.height / ratio, ink.text);
  return canvas;
}
