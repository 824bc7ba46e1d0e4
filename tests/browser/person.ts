import type { Page } from 'playwright-core';
import { LINES } from '../../flows/lines.ts';
import { type ClipVoice, sayInto, spokenClip } from './spoken-microphone.ts';

/** One exchange of a talk with the app. */
export interface Exchange {
  readonly safety: string;
  readonly asked: string;
  readonly said: string;
  readonly voice: ClipVoice;
  /** The words as the recogniser gave them; empty where nothing was heard. */
  readonly heard: string;
  /** What came of it, as the app read it back. */
  readonly readBack: string;
  /** Whether the app went on. */
  readonly wentOn: boolean;
}

export interface Talk {
  readonly exchanges: readonly Exchange[];
  readonly closed: boolean;
}

export interface TalkOptions {
  /** Called after every exchange, for whoever watches. */
  readonly tell?: (exchange: Exchange) => void;
  /** Ends the talk before this screen is answered. */
  readonly stopAt?: (screen: Screen) => boolean;
  /** The talk is over once the heading of the page says this; left out, once the job is closed. */
  readonly overAt?: string;
}

/** What somebody says to a screen; `wait` says nothing until it changes. */
export type Answering = (screen: Screen) => string | 'wait';

/** What a person sees of a job. */
export interface Screen {
  readonly safety: string;
  readonly question: string;
  readonly heard: string;
  readonly notices: string;
  readonly buttons: readonly string[];
}

/** A person who gave up says so: the app did not go on after this many tries. */
const MOST_TRIES = 4;
/** A prompt may be long; then it is the app's turn to be patient. */
const PATIENCE_MS = 60_000;

/**
 * Talks through by voice alone: waits until the app listens, says the answer in one of the voices, and sees what was
 * understood.
 */
export async function talkThrough(
  page: Page,
  answer: Answering,
  voices: readonly ClipVoice[],
  { tell, stopAt, overAt = LINES.closed }: TalkOptions = {},
): Promise<Talk> {
  const exchanges: Exchange[] = [];
  let tries = 0;
  while (tries < MOST_TRIES) {
    const before = await untilListening(page, overAt);
    if (before === 'over') return { exchanges, closed: true };
    if (stopAt?.(before)) break;
    const said = answer(before);
    if (said === 'wait') {
      await untilChanged(page, before);
      continue;
    }
    const voice = voices[exchanges.length % voices.length] ?? 'slt';
    await sayInto(page, spokenClip(said, voice));
    const after = await untilDecided(page, before, overAt);
    const wentOn = after === 'over' || after.question !== before.question;
    const exchange: Exchange = {
      safety: before.safety,
      asked: before.question,
      said,
      voice,
      heard: after === 'over' ? '' : after.heard,
      readBack: after === 'over' ? '' : after.notices,
      wentOn,
    };
    exchanges.push(exchange);
    tell?.(exchange);
    tries = wentOn ? 0 : tries + 1;
  }
  return { exchanges, closed: false };
}

async function untilListening(page: Page, overAt: string): Promise<Screen | 'over'> {
  await page.waitForFunction(
    (over) =>
      document.querySelector('[data-turn="listening"], .heard-line[data-trouble="true"]') ||
      document.querySelector('h1')?.textContent?.includes(over),
    overAt,
    { timeout: PATIENCE_MS },
  );
  return readScreen(page, overAt);
}

/** Waits until something else is asked, or what was asked stands there otherwise. */
async function untilChanged(page: Page, { question }: Screen): Promise<void> {
  await page.waitForFunction((was) => document.querySelector('h1')?.textContent?.trim() !== was, question, {
    timeout: PATIENCE_MS,
  });
}

async function untilDecided(page: Page, before: Screen, overAt: string): Promise<Screen | 'over'> {
  await page
    .waitForFunction(
      () => !document.querySelector('[data-turn="listening"], [data-turn="hearing"], [data-turn="thinking"]'),
      undefined,
      { timeout: 12_000 },
    )
    .catch(() => before);
  return readScreen(page, overAt);
}

/** Read text by text: a function kept in a name does not survive the way into the page under every loader. */
async function readScreen(page: Page, overAt: string): Promise<Screen | 'over'> {
  const question = await textOf(page, 'h1');
  if (question === undefined || question.includes(overAt)) return 'over';
  const trouble = await textOf(page, '.heard-line[data-trouble="true"] p');
  if (trouble) throw new Error(`The app says: ${trouble}`);
  return {
    question,
    safety: (await textOf(page, '.safety-word')) ?? '',
    heard: (await textOf(page, '.heard-line q')) ?? '',
    notices: (await textOf(page, '.heard-line b')) ?? '',
    buttons: await page.locator('.answer-tags .tag:not([data-more="true"]) .tag-label').allTextContents(),
  };
}

async function textOf(page: Page, selector: string): Promise<string | undefined> {
  const [text] = await page.locator(selector).allTextContents();
  return text?.trim();
}
