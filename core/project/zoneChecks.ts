/** Zones lie inside the barrel, run forwards and leave each other alone. */

import type { Issue } from '../result.ts';
import { asList, asNumber, asObject, asText } from './looseView.ts';

type Path = readonly (string | number)[];

/** Touching zones may share an edge; rounding of typed millimetres is forgiven. mm */
const slackMm = 1e-6;

interface Span {
  readonly index: number;
  readonly name: string;
  readonly start: number;
  readonly end: number;
}

function spansOf(barrel: unknown): readonly Span[] {
  return asList(asObject(barrel).zones).map((zone, index) => {
    const z = asObject(zone);
    return { index, name: asText(z.name) ?? `zone ${index + 1}`, start: asNumber(z.startMm), end: asNumber(z.endMm) };
  });
}

function placeIssues(span: Span, lengthMm: number, path: Path): readonly Issue[] {
  const at = [...path, 'zones', span.index];
  const issues: Issue[] = [];
  if (span.end <= span.start) {
    issues.push({
      path: [...at, 'endMm'],
      code: 'zone-backwards',
      message: `Zone "${span.name}" ends at or before its start of ${span.start} mm.`,
      value: `${span.end} mm`,
      allowed: `more than ${span.start} mm`,
      remedy: 'Move the end behind the start.',
    });
  }
  if (span.end > lengthMm + slackMm) {
    issues.push({
      path: [...at, 'endMm'],
      code: 'zone-outside',
      message: `Zone "${span.name}" reaches past the end of the barrel.`,
      value: `${span.end} mm`,
      allowed: `at most ${lengthMm} mm, the barrel's length`,
      remedy: 'Shorten the zone or lengthen the barrel.',
    });
  }
  return issues;
}

/** Compares each zone, in order of place, with the farthest end before it. */
function overlapIssues(spans: readonly Span[], path: Path): readonly Issue[] {
  const ordered = spans.filter((s) => s.end > s.start).sort((a, b) => a.start - b.start || a.end - b.end);
  const issues: Issue[] = [];
  let before = ordered[0];
  for (const span of ordered.slice(1)) {
    if (before && span.start < before.end - slackMm) {
      issues.push({
        path: [...path, 'zones', span.index, 'startMm'],
        code: 'zones-overlap',
        message: `Zone "${span.name}" begins before zone "${before.name}" has ended.`,
        value: `${span.start} mm`,
        allowed: `at least ${before.end} mm`,
        remedy: 'Move one of the two zones.',
      });
    }
    if (!before || span.end > before.end) before = span;
  }
  return issues;
}

/**
 * Checks the zones of a barrel; numbers that are missing are left to the schema.
 * @param barrel stored barrel, mm
 * @param path path of the barrel
 * @returns one issue per fault
 */
export function zoneIssues(barrel: unknown, path: Path): readonly Issue[] {
  const spans = spansOf(barrel);
  const lengthMm = asNumber(asObject(barrel).lengthMm);
  return [...spans.flatMap((span) => placeIssues(span, lengthMm, path)), ...overlapIssues(spans, path)];
}
