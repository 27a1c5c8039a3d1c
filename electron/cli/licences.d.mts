/** Types of what tests use of licences.mjs. */

/** A package in a bundle. */
export interface NoticedPackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly text: string;
}

/** Folder of the package a module lies in; null for modules of ours. */
export function packageFolder(id: string): string | null;
/** Whether a licence, as SPDX names joined by OR or AND, is allowed to a package. */
export function isAllowed(name: string, licence: string): boolean;
/** What a package says of itself. Throws where licence or text is missing or not allowed. */
export function readPackage(folder: string): NoticedPackage;
/** The notices as one text. */
export function noticeText(packages: readonly NoticedPackage[]): string;
/** Writes the notices of the packages in these folders. Throws as readPackage, naming every offender. */
export function writeNotices(folders: Iterable<string>, file: string): void;
