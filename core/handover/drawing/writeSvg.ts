/** A sheet as SVG 1.1 in millimetres. Lettering stays text; each piece is set to its computed width, whatever font there is. */

import { type FlatEntity, flatLayers } from './flatten.ts';
import { layers } from './layers.ts';
import { capShare } from './lettering.ts';
import type { Drawing, LayerName, Point, Sheet, TextEntity } from './model.ts';
import { runsOf, signStroke } from './signs.ts';

const round = (value: number): string => String(Number(value.toFixed(3)) + 0);

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** SVG counts down from the top. */
const pointText = (height: number, { x, y }: Point): string => `${round(x)} ${round(height - y)}`;

function textSvg(text: TextEntity, height: number): string {
  const size = text.height / capShare;
  return runsOf(text)
    .map(({ text: part, at, width, strokes }) => {
      if (strokes.length > 0) {
        const d = strokes.map((stroke) => `M${stroke.map((p) => pointText(height, p)).join('L')}`).join('');
        return `<path class="sign" d="${d}" stroke-width="${round(signStroke(text.height))}"/>`;
      }
      const turn = text.turn === 90 ? ` transform="rotate(-90 ${pointText(height, at)})"` : '';
      const place = `x="${round(at.x)}" y="${round(height - at.y)}" font-size="${round(size)}"`;
      return `<text ${place} textLength="${round(width)}" lengthAdjust="spacingAndGlyphs"${turn}>${escaped(part)}</text>`;
    })
    .join('');
}

function entitySvg(entity: FlatEntity, height: number): string {
  switch (entity.kind) {
    case 'path':
      return `<path d="M${entity.points.map((p) => pointText(height, p)).join('L')}${entity.closed ? 'Z' : ''}"/>`;
    case 'fill':
      return `<path class="fill" d="M${entity.points.map((p) => pointText(height, p)).join('L')}Z"/>`;
    case 'circle':
      return `<circle cx="${round(entity.centre.x)}" cy="${round(height - entity.centre.y)}" r="${round(entity.radius)}"/>`;
    case 'arc': {
      const end = (degrees: number) => ({
        x: entity.centre.x + entity.radius * Math.cos((degrees * Math.PI) / 180),
        y: entity.centre.y + entity.radius * Math.sin((degrees * Math.PI) / 180),
      });
      const wide = entity.to - entity.from > 180 ? 1 : 0;
      const r = round(entity.radius);
      return `<path d="M${pointText(height, end(entity.from))}A${r} ${r} 0 ${wide} 0 ${pointText(height, end(entity.to))}"/>`;
    }
    case 'text':
      return textSvg(entity, height);
  }
}

function groupSvg(layer: LayerName, entities: readonly FlatEntity[], height: number): string {
  const { width, dashes } = layers[layer];
  const dashed = dashes.length > 0 ? ` stroke-dasharray="${dashes.join(' ')}"` : '';
  const body = entities.map((entity) => entitySvg(entity, height)).join('\n');
  return `<g id="${layer}" stroke-width="${width}"${dashed}>\n${body}\n</g>`;
}

/** Presentation without style sheets, which strict pages refuse: fills of texts and arrows are attributes of groups. */
const plain = (svg: string): string =>
  svg
    .replaceAll('<path class="fill"', '<path fill="#000" stroke="none"')
    .replaceAll('<path class="sign"', '<path stroke-dasharray="none"')
    .replaceAll('<text ', '<text fill="#000" stroke="none" ');

/** Text of one sheet. */
export function sheetSvg(drawing: Drawing, sheet: Sheet): string {
  const { width, height } = sheet;
  const head = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="title desc" xml:lang="${escaped(drawing.language)}">`,
    `<title id="title">${escaped(sheet.title)}</title>`,
    `<desc id="desc">${escaped(`${drawing.description}. Views: ${sheet.views.map(({ name }) => name).join('; ')}. Scale ${sheet.scaleText}.`)}</desc>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    '<g fill="none" stroke="#000" stroke-linejoin="round" stroke-linecap="butt" font-family="Helvetica, Arial, sans-serif">',
  ];
  const groups = flatLayers(sheet).map(({ layer, entities }) => groupSvg(layer, entities, height));
  return plain([...head, ...groups, '</g>', '</svg>', ''].join('\n'));
}
