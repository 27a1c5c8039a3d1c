/** A picture file opened inside the page, within limits, and the pixels of a square of it. */

/** Largest file that is opened, bytes. */
export const largestFile = 40 * 1024 * 1024;
/** Most pixels that are decoded. */
export const mostPixels = 64e6;
/** Widest copy of a square that is averaged, pixels. */
const widestCopy = 512;

/** An open picture. */
export interface Picture {
  readonly name: string;
  /** address within the page; given back with closePicture */
  readonly address: string;
  readonly image: HTMLImageElement;
  readonly width: number;
  readonly height: number;
}

/** A square on a picture: centre as shares of width and height, side as a share of the width. */
export interface Square {
  readonly x: number;
  readonly y: number;
  readonly side: number;
}

/** Why a picture is not opened. */
export type Refusal = 'tooLarge' | 'unreadable';

/** How files of JPEG and PNG begin, and what stands at the start and further on in WebP. */
const [jpeg, png, riff, webp] = ['\xff\xd8\xff', '\x89PNG\r\n\x1a\n', 'RIFF', 'WEBP'];

/**
 * Whether a file begins as JPEG, PNG or WebP do, whatever its name says: other kinds the browser knows may hold drawings
 * that take for ever to draw.
 */
export async function isPicture(file: Blob): Promise<boolean> {
  try {
    const head = String.fromCharCode(...new Uint8Array(await file.slice(0, 16).arrayBuffer()));
    return [jpeg, png].some((start) => head.startsWith(start)) || (head.startsWith(riff) && head.startsWith(webp, 8));
  } catch {
    // the file went away after it was chosen
    return false;
  }
}

/** Opens a picture file. Its kind and its size are known before its pixels are decoded. */
export async function openPicture(file: File): Promise<Picture | Refusal> {
  if (file.size > largestFile) return 'tooLarge';
  if (!(await isPicture(file))) return 'unreadable';
  const address = URL.createObjectURL(file);
  const image = new Image();
  image.src = address;
  const loaded = await new Promise<boolean>((resolve) => {
    image.onload = () => resolve(true);
    image.onerror = () => resolve(false);
  });
  const [width, height] = [image.naturalWidth, image.naturalHeight];
  const refusal = !loaded || width * height === 0 ? 'unreadable' : width * height > mostPixels ? 'tooLarge' : null;
  if (refusal === null) return { name: file.name, address, image, width, height };
  URL.revokeObjectURL(address);
  return refusal;
}

/** Gives the picture's memory back. */
export const closePicture = (picture: Picture | null): void => {
  if (picture) URL.revokeObjectURL(picture.address);
};

/** A square moved and sized so that it lies on the picture; its side is 0.5 to 50 % of the width. */
export function within(square: Square, { width, height }: Pick<Picture, 'width' | 'height'>): Square {
  const side = Math.min(0.5, height / width, Math.max(0.005, square.side));
  const tall = (side * width) / height;
  const between = (value: number, half: number) => Math.min(1 - half, Math.max(half, value));
  return { x: between(square.x, side / 2), y: between(square.y, tall / 2), side };
}

/** The square's pixels, red, green, blue, alpha; pixels of large squares are taken together. Null where there are none. */
export function pixelsOf({ image, width, height }: Picture, square: Square): Uint8ClampedArray | null {
  const side = Math.max(1, Math.round(square.side * width));
  const shown = Math.min(side, widestCopy);
  const canvas = document.createElement('canvas');
  canvas.width = shown;
  canvas.height = shown;
  const context = canvas.getContext('2d', { willReadFrequently: true, colorSpace: 'srgb' });
  if (!context) return null;
  const [left, top] = [square.x * width - side / 2, square.y * height - side / 2];
  try {
    context.drawImage(image, left, top, side, side, 0, 0, shown, shown);
    return context.getImageData(0, 0, shown, shown).data;
  } catch {
    // a picture whose header was in order and whose pixels are not
    return null;
  }
}
