/** Colour of a strand from a picture with a white reference beside it. */

import { type ChangeEvent, useEffect, useMemo, useState } from 'react';
import { fail, type PhotoColour, photoCaveats, photoColour, type Result, regionMean } from '../../core/index.ts';
import { IssueText } from '../fields/IssueText.tsx';
import { readNumber } from '../fields/quantity.ts';
import { benchText } from '../strings/bench.ts';
import { PhotoResult } from './PhotoResult.tsx';
import { PhotoSquare, type SquareName } from './PhotoSquare.tsx';
import { closePicture, largestFile, mostPixels, openPicture, type Picture, pixelsOf, type Square } from './picture.ts';

const words = benchText.photo;

type Squares = Readonly<Record<SquareName, Square>>;

const firstPlaces: Squares = { white: { x: 0.25, y: 0.5, side: 0.08 }, strand: { x: 0.75, y: 0.5, side: 0.05 } };

const limits = [`${largestFile / 1024 / 1024} MB`, `${mostPixels / 1e6} million pixels`] as const;

/** The colour between the squares; an issue where the picture's pixels cannot be had. */
function measure(picture: Picture, squares: Squares, lightness: number): Result<PhotoColour> {
  const [strand, white] = (['strand', 'white'] as const).map((name) => {
    const pixels = pixelsOf(picture, squares[name]);
    return pixels && regionMean(pixels);
  });
  return strand && white
    ? photoColour(strand, white, lightness)
    : fail({ path: [], code: 'no-pixels', message: words.unreadable, remedy: words.chooseOther });
}

function Board(props: { readonly picture: Picture; readonly squares: Squares; place(squares: Squares): void }) {
  const { picture, squares, place } = props;
  return (
    <div>
      <div className="photo-board">
        <img src={picture.address} alt={words.canvas} draggable={false} />
        {(['white', 'strand'] as const).map((name) => (
          <PhotoSquare
            key={name}
            {...{ name, picture, square: squares[name] }}
            place={(square) => place({ ...squares, [name]: square })}
          />
        ))}
      </div>
      <p className="quiet">{words.help}</p>
    </div>
  );
}

const lightnessSpec = { key: 'whiteness', label: words.whiteness, unit: 'ratio', help: words.whitenessHelp } as const;

function Measured({ picture }: { readonly picture: Picture }) {
  const [squares, place] = useState(firstPlaces);
  const [typed, type] = useState('95');
  const read = readNumber(typed, lightnessSpec, []);
  const lightness = read.ok && read.value >= 50 && read.value <= 100 ? read.value : null;
  const colour = useMemo(
    () => (lightness === null ? null : measure(picture, squares, lightness)),
    [picture, squares, lightness],
  );
  return (
    <div className="photo">
      <Board {...{ picture, squares, place }} />
      <div className="photo-side">
        <label className="photo-white" title={words.whitenessHelp}>
          {words.whiteness}{' '}
          <input
            className="number"
            type="text"
            inputMode="decimal"
            value={typed}
            aria-invalid={lightness === null}
            onChange={({ target }) => type(target.value)}
          />
        </label>
        <p className="quiet">{words.whitenessHelp}</p>
        {lightness === null && <p className="issue">{words.whiteRange}</p>}
        {colour?.ok && <PhotoResult colour={colour.value} />}
        {colour && !colour.ok && colour.issues.map((issue) => <IssueText key={issue.code} issue={issue} />)}
      </div>
    </div>
  );
}

function Caveats() {
  return (
    <section>
      <h3>{words.caveats}</h3>
      <ul className="photo-caveats">
        {photoCaveats.map((caveat) => (
          <li key={caveat}>{caveat}</li>
        ))}
      </ul>
    </section>
  );
}

/** The part of the bench log. */
export function PhotoTab() {
  const [picture, setPicture] = useState<Picture | null>(null);
  const [refusal, refuse] = useState<string | null>(null);
  useEffect(() => () => closePicture(picture), [picture]);
  const choose = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const file = target.files?.[0];
    if (!file) return;
    const opened = await openPicture(file);
    const refused = typeof opened === 'string';
    refuse(!refused ? null : opened === 'tooLarge' ? words.tooLarge(...limits) : words.unreadable);
    if (!refused) setPicture(opened);
  };
  return (
    <>
      <div className="bench-tools">
        <label className="file-choice">
          <span className="tool">{words.choose}</span>
          <input
            type="file"
            className="unseen"
            accept="image/jpeg,image/png,image/webp"
            onChange={(event) => void choose(event)}
          />
        </label>
        <span className="quiet">{picture ? picture.name : words.start}</span>
      </div>
      {refusal && (
        <p className="issue" role="alert">
          {refusal}
        </p>
      )}
      {picture && <Measured key={picture.address} picture={picture} />}
      <Caveats />
    </>
  );
}
