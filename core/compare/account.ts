/** Which revision is better for what, and by how much, in sentences made from the numbers and nothing else. */

import type { Prediction } from '../prediction/types.ts';
import { capacityNames } from '../present/groups.ts';
import {
  type ComparedQuantity,
  comparedQuantities,
  comparedText,
  type NumberWriter,
  plainWriter,
  withinError,
} from './quantities.ts';

/** What a revision may be better for. */
export type AccountTopic = 'output' | 'torque' | 'dwell' | 'colour' | 'dead' | 'making';

/** How the revisions stand in one topic. */
export interface TopicAccount {
  readonly topic: AccountTopic;
  readonly label: string;
  /** id of the compared figure that decides it */
  readonly figure: string;
  /**
   * best: one or some are ahead of all others by more than the model's error; leading: those at the head are within it
   * of each other, but only some of them are ahead of the next by more; alike: all are within it, or too close to
   * matter; unknown: fewer than two have a number
   */
  readonly standing: 'best' | 'leading' | 'alike' | 'unknown';
  /** ids of those ahead of all others; empty unless best */
  readonly best: readonly string[];
  /**
   * lead of the last of those beyond the next over it, as a share of it; null unless best or leading, or where the next
   * is 0
   */
  readonly lead: number | null;
  /** relative error of the model in this figure between two similar designs */
  readonly modelError: number;
  readonly sentence: string;
}

/** The whole answer. */
export interface BetterForWhat {
  readonly topics: readonly TopicAccount[];
  readonly paragraph: string;
}

/** A revision that has no prediction, and why. */
export interface RefusedRevision {
  readonly id: string;
  readonly reason: string;
}

interface Topic {
  readonly topic: AccountTopic;
  readonly label: string;
  readonly figure: string;
  /** in the figure's own words, where the label does not say it */
  readonly more: string;
  /** SI difference that does not matter, whatever the model's error, and why */
  readonly trifle?: { readonly under: number; readonly why: string };
}

const topics: readonly Topic[] = [
  { topic: 'output', label: 'output', figure: 'volumeFlow', more: 'more' },
  { topic: 'torque', label: 'torque reserve', figure: 'motorMargin', more: 'more' },
  { topic: 'dwell', label: 'dwell', figure: 't95', more: 'less' },
  {
    ...{ topic: 'colour', label: 'colour', figure: 'dE00Mean', more: 'less' },
    // about one dE00 is what a trained eye just sees side by side: common practice
    trifle: { under: 1, why: 'less than an eye sees, about 1 ΔE00' },
  },
  {
    ...{ topic: 'dead', label: 'dead melt', figure: 'over3', more: 'less' },
    // own choice: a hundredth of the volume
    trifle: { under: 0.01, why: 'less than 1 % of the melt' },
  },
  { topic: 'making', label: 'ease of making', figure: 'slenderness', more: 'less' },
];

/** A revision with its number (SI). */
interface Placed {
  readonly id: string;
  readonly value: number;
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;

const percent = (share: number, write: NumberWriter): string => `${write.number(100 * share, 2)} %`;

const quantityOf = (figure: string): ComparedQuantity => {
  const found = comparedQuantities.find(({ id }) => id === figure);
  if (!found) throw new Error(`no figure is called ${figure}`);
  return found;
};

/** Best first; equal numbers in the order given. */
function ranked(predictions: readonly Prediction[], quantity: ComparedQuantity): Placed[] {
  const placed = predictions.flatMap((prediction) => {
    const value = quantity.value(prediction);
    return value === null || !Number.isFinite(value) ? [] : [{ id: prediction.revisionId, value }];
  });
  return placed.sort((a, b) => (quantity.better === 'more' ? b.value - a.value : a.value - b.value));
}

/** What the figure of a topic is called within a sentence. */
const figureWords: Readonly<Record<AccountTopic, string>> = {
  output: '',
  torque: ' times the torque needed',
  dwell: ' until 95 % has left',
  colour: ' ΔE00 on average',
  dead: ' of the melt older than 3 × mean',
  making: ' as length of the screw over its thinnest root',
};

const shown = (topic: Topic, value: number, write: NumberWriter): string =>
  comparedText(value, quantityOf(topic.figure), write);

function alikeSentence(topic: Topic, order: readonly Placed[], why: string, write: NumberWriter): string {
  const [first, last] = [order[0], order[order.length - 1]];
  const [best, worst] = [first, last].map(({ value }) => shown(topic, value, write));
  const what = figureWords[topic.topic];
  if (first.value === last.value) return `${capital(topic.label)}: ${best}${what}, ${why}.`;
  return `${capital(topic.label)}: ${best} (${first.id}) to ${worst} (${last.id})${what}, ${why}.`;
}

const capital = (words: string): string => words[0].toUpperCase() + words.slice(1);

/** How far those ahead lead the next, in words. */
function leadText(topic: Topic, next: Placed, lead: number | null, write: NumberWriter): string {
  if (lead === null) return `${next.id} has ${shown(topic, next.value, write)}`;
  return `${percent(lead, write)} ${topic.more} than ${next.id} (${shown(topic, next.value, write)})`;
}

/** Those at the head, those of them who are beyond the next by more than the model's error, and the next. */
interface Lead {
  readonly head: readonly Placed[];
  /** all of the head where it is best; in the order of the head, one at least */
  readonly beyond: readonly Placed[];
  readonly next: Placed;
  readonly share: number | null;
}

const namesOf = (placed: readonly Placed[]): string => listed(placed.map(({ id }) => id));

/** Their numbers from the best to the last, or the one where they read alike. */
function rangeText(topic: Topic, placed: readonly Placed[], write: NumberWriter): string {
  const ends = [placed[0], placed[placed.length - 1]].map(({ value }) => shown(topic, value, write));
  return `${[...new Set(ends)].join(' to ')}${figureWords[topic.topic]}`;
}

function headSentence(topic: Topic, { head, beyond, next, share }: Lead, write: NumberWriter): string {
  const by = leadText(topic, next, share, write);
  const least = beyond.length > 1 ? `at least ${by}` : by;
  if (beyond.length < head.length) {
    const are = beyond.length > 1 ? 'are' : 'is';
    const only = `only ${namesOf(beyond)} ${are} beyond ${next.id} by more than the model's error`;
    return `For ${topic.label} ${namesOf(head)} lead; ${only}: ${rangeText(topic, beyond, write)}, ${least}.`;
  }
  if (head.length > 1) {
    return `For ${topic.label} ${namesOf(head)} are alike and best: ${rangeText(topic, head, write)}, ${least}.`;
  }
  return `For ${topic.label} ${namesOf(head)} is best: ${rangeText(topic, head, write)}, ${by}.`;
}

/** Who leads whom: those within the error of the best, and which of them are beyond the next. */
function leadOf(topic: Topic, head: readonly Placed[], next: Placed): Lead {
  const beyond = head.filter(({ value }) => !isNear(topic, value, next.value));
  const share = next.value === 0 ? null : Math.abs(beyond[beyond.length - 1].value / next.value - 1);
  return { head, beyond, next, share };
}

/** Whether two numbers are within the model's error of each other, or too close to matter. */
const isNear = (topic: Topic, a: number, b: number): boolean =>
  withinError(quantityOf(topic.figure), a, b) || Math.abs(a - b) < (topic.trifle?.under ?? 0);

/** Why numbers that are all near each other decide nothing. */
function alikeReason(topic: Topic, order: readonly Placed[], write: NumberWriter): string {
  const quantity = quantityOf(topic.figure);
  const [first] = order;
  if (order.every(({ value }) => value === first.value)) return 'the same';
  const within = order.every(({ value }) => withinError(quantity, first.value, value));
  return within
    ? `smaller than the model's error of ${percent(quantity.modelError, write)}`
    : (topic.trifle?.why ?? '');
}

function topicAccount(topic: Topic, predictions: readonly Prediction[], write: NumberWriter): TopicAccount {
  const quantity = quantityOf(topic.figure);
  const order = ranked(predictions, quantity);
  const shared = { topic: topic.topic, label: topic.label, figure: topic.figure, modelError: quantity.modelError };
  if (order.length < 2) {
    const sentence = `For ${topic.label} there are no two numbers to compare.`;
    return { ...shared, standing: 'unknown', best: [], lead: null, sentence };
  }
  const near = order.filter(({ value }) => isNear(topic, order[0].value, value));
  const next = order[near.length];
  if (next === undefined) {
    const sentence = alikeSentence(topic, order, alikeReason(topic, order, write), write);
    return { ...shared, standing: 'alike', best: [], lead: null, sentence };
  }
  const lead = leadOf(topic, near, next);
  const sentence = headSentence(topic, lead, write);
  const best = lead.beyond.length === near.length;
  const standing = best ? 'best' : 'leading';
  return { ...shared, standing, best: best ? near.map(({ id }) => id) : [], lead: lead.share, sentence };
}

const stillSentence = ({ revisionId, limit }: Prediction): string =>
  `${revisionId} delivers nothing (${capacityNames[limit]}), so of what only a flow has it has no number.`;

/**
 * Which revision is better for what. Only differences beyond the model's error between similar designs count; the others
 * are called by that name.
 * @param predictions of the revisions that have one, in any order
 * @param refused revisions without a prediction
 * @param write how numbers are written
 */
export function betterForWhat(
  predictions: readonly Prediction[],
  refused: readonly RefusedRevision[] = [],
  write: NumberWriter = plainWriter,
): BetterForWhat {
  const all = topics.map((topic) => topicAccount(topic, predictions, write));
  const sentences = (standing: TopicAccount['standing']) =>
    all.filter((topic) => topic.standing === standing).map(({ sentence }) => sentence);
  const unknown = all.filter(({ standing }) => standing === 'unknown').map(({ label }) => label);
  const compared = predictions.length > 1;
  const best = [...sentences('best'), ...sentences('leading')];
  const parts = [
    ...refused.map(({ id, reason }) => `${id} is refused and left out: ${reason}`),
    ...predictions.filter(({ output }) => !output.flows).map(stillSentence),
    ...(compared ? best : []),
    ...(compared && best.length === 0 && unknown.length < all.length ? [nothingExceeds] : []),
    ...(compared ? sentences('alike') : []),
    ...(compared && unknown.length > 0 ? [`No two numbers to compare for ${listed(unknown)}.`] : []),
  ];
  return { topics: compared ? all : [], paragraph: parts.join(' ') };
}

const nothingExceeds =
  "Nothing that decides between them differs by more than the model's error: the numbers give no reason to prefer one.";
